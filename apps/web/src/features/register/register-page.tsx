import type { Area } from '@glandkeeper/contract/areas'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { AreaForm } from './area-form.tsx'
import { siteAreas } from './queries.ts'
import css from './register-page.module.css'

export function RegisterPage() {
  const known = useQuery(siteAreas)
  const mayChange = keepsRegister(useMe())
  const [isAdding, setIsAdding] = useState(false)
  return (
    <main className={page.page}>
      <title>Register · Glandkeeper</title>
      <div className={page.title}>
        <h1>Register</h1>
        <span className="soft">the areas of the site, in walking order</span>
      </div>
      <div className={page.acts}>
        {mayChange && (
          <>
            <Link to="/register/new-valve" className={css.act}>
              Add a valve
            </Link>
            <Link to="/imports" className={css.act}>
              Import a list
            </Link>
            <Link to="/register/site" className={css.act}>
              Site and people
            </Link>
            <Link to="/register/crews" className={css.act}>
              Crews and days off
            </Link>
          </>
        )}
        <Link to="/register/labels" className={css.act}>
          Print labels
        </Link>
        {mayChange && !isAdding && (
          <button type="button" onClick={() => setIsAdding(true)}>
            Add an area
          </button>
        )}
      </div>
      {isAdding && <AreaForm onDone={() => setIsAdding(false)} />}
      {known.data ? (
        <Areas areas={known.data.areas} mayChange={mayChange} />
      ) : (
        <Waiting error={known.error} again={() => void known.refetch()} />
      )}
    </main>
  )
}

function Waiting({ error, again }: { error: unknown; again: () => void }) {
  return error ? (
    <ProblemNote error={error} again={{ words: 'Read the areas again', onPress: again }} />
  ) : (
    <p role="status">Reading the areas</p>
  )
}

function Areas({ areas, mayChange }: { areas: readonly Area[]; mayChange: boolean }) {
  if (areas.length === 0) {
    return (
      <Empty title="No area yet">
        <p>
          An area is what a fitter walks as one: a building, a floor, a tank farm. Add one here, or import a valve list, which
          brings its areas along.
        </p>
      </Empty>
    )
  }
  return (
    <table className={`${page.table} ${css.areas}`}>
      <thead>
        <tr>
          <th scope="col">Code</th>
          <th scope="col">Name</th>
          <th scope="col" className={page.figure}>
            Walk
          </th>
          <th scope="col" className={page.figure}>
            Level
          </th>
          <th scope="col" className={page.figure}>
            Valves
          </th>
          {mayChange && <th scope="col">To change</th>}
        </tr>
      </thead>
      <tbody>
        {areas
          .toSorted((one, other) => one.walkPosition - other.walkPosition)
          .map((area) => (
            <AreaRow key={area.areaId} area={area} mayChange={mayChange} />
          ))}
      </tbody>
    </table>
  )
}

function AreaRow({ area, mayChange }: { area: Area; mayChange: boolean }) {
  const [isChanging, setIsChanging] = useState(false)
  if (isChanging) {
    return (
      <tr>
        <td colSpan={6}>
          <AreaForm area={area} onDone={() => setIsChanging(false)} />
        </td>
      </tr>
    )
  }
  return (
    <tr>
      <th scope="row">{area.code}</th>
      <td>{area.name}</td>
      <td className={page.figure}>{area.walkPosition}</td>
      <td className={page.figure}>{area.level}</td>
      <td className={page.figure}>
        {area.valveCount > 0 ? (
          <Link
            to={`/?area=${encodeURIComponent(area.code)}`}
            aria-label={`${area.valveCount} valves of ${area.name} on the board`}
          >
            {area.valveCount}
          </Link>
        ) : (
          0
        )}
      </td>
      {mayChange && (
        <td className={page.figure}>
          <button type="button" className={css.quiet} onClick={() => setIsChanging(true)} aria-label={`Change area ${area.name}`}>
            Change
          </button>
        </td>
      )}
    </tr>
  )
}
