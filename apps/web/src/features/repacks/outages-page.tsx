import type { Outage } from '@glandkeeper/contract/outages'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { keepsRegister, useMe } from '../people/index.tsx'
import { OutageForm } from './outage-form.tsx'
import { OutageRow } from './outage-row.tsx'
import { outagesOfSite } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import css from './repacks.module.css'

/** Outages that come, with what is planned for them, and those that are over, to be looked back on. */
export function OutagesPage() {
  const outages = useQuery(outagesOfSite)
  const mayChange = keepsRegister(useMe())
  const [isAdding, setIsAdding] = useState(false)
  const planned = outages.data?.outages.filter(({ state }) => state === 'planned') ?? []
  const past = outages.data?.outages.filter(({ state }) => state !== 'planned') ?? []
  return (
    <main className={page.page}>
      <title>Outages · Glandkeeper</title>
      <div className={page.title}>
        <h1>Outages</h1>
        <Link to="/repacks">Repacks</Link>
      </div>
      {mayChange &&
        (isAdding ? (
          <OutageForm onDone={() => setIsAdding(false)} />
        ) : (
          <div className={page.acts}>
            <button type="button" onClick={() => setIsAdding(true)}>
              Add an outage
            </button>
          </div>
        ))}
      {!outages.data && <Reading query={outages} things="outages" />}
      {outages.data?.outages.length === 0 && (
        <Empty title="No outage yet">
          Put down when the plant, or some of its areas, will be down, and the hours there are for repacks: valves that cannot be
          isolated while it runs wait for one.
        </Empty>
      )}
      <Outages title="To come" outages={planned} mayChange={mayChange} />
      <Outages title="Over, or called off" outages={past} mayChange={mayChange} />
    </main>
  )
}

interface OutagesProps {
  title: string
  outages: readonly Outage[]
  mayChange: boolean
}

function Outages({ title, outages, mayChange }: OutagesProps) {
  if (outages.length === 0) return null
  const id = title.split(',')[0]?.toLowerCase().replaceAll(' ', '-') ?? ''
  return (
    <section className={css.part} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul className={css.outages}>
        {outages.map((outage) => (
          <OutageRow key={outage.outageId} outage={outage} among={outages} mayChange={mayChange} />
        ))}
      </ul>
    </section>
  )
}
