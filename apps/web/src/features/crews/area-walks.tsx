import type { AreaWalk, Crew, WalkPlan } from '@glandkeeper/contract/crews'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { AreaWalkForm } from './area-walk-form.tsx'
import css from './crews.module.css'
import { areaWalks, crewsOfSite } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'

/** How each area is walked. */
export function AreaWalks() {
  const known = useQuery(areaWalks)
  const crews = useQuery(crewsOfSite)
  return (
    <section className={css.section} aria-labelledby="the-area-walks">
      <h2 id="the-area-walks">How areas are walked</h2>
      <p>
        Setting up an area counts once in a week: permit, tools, the way there and back. Where nothing is said, the setting holds.
      </p>
      <div className={page.acts}>
        <Link to="/register/settings">The setting of the site</Link>
      </div>
      {known.data && crews.data ? (
        <WalkTable walks={known.data.walks} crews={crews.data.crews} />
      ) : (
        <Reading query={known.data ? crews : known} things="areas" />
      )}
    </section>
  )
}

function WalkTable({ walks, crews }: { walks: readonly AreaWalk[]; crews: readonly Crew[] }) {
  if (walks.length === 0) return <p className="soft">No area yet: add one on the page of the register.</p>
  return (
    <table className={`${page.table} ${css.rows}`}>
      <caption>What setting up takes, who walks there and how, in walking order</caption>
      <thead>
        <tr>
          <th scope="col">Area</th>
          <th scope="col">Minutes to set up</th>
          <th scope="col">Skill asked for</th>
          <th scope="col">Crew</th>
          <th scope="col">Way in and stairs</th>
          <th scope="col">To change</th>
        </tr>
      </thead>
      <tbody>
        {walks.map((walk) => (
          <WalkRow key={walk.areaCode} walk={walk} crews={crews} />
        ))}
      </tbody>
    </table>
  )
}

function WalkRow({ walk, crews }: { walk: AreaWalk; crews: readonly Crew[] }) {
  const { areaCode, areaName, setUpMinutes, skill, crewId, walkPlan } = walk
  const [isChanging, setIsChanging] = useState(false)
  if (isChanging) {
    return (
      <tr>
        <td colSpan={6}>
          <AreaWalkForm walk={walk} crews={crews} onDone={() => setIsChanging(false)} />
        </td>
      </tr>
    )
  }
  const crewName = crews.find((crew) => crew.crewId === crewId)?.name
  return (
    <tr>
      <th scope="row">
        <span className={css.code}>{areaCode}</span> {areaName}
      </th>
      <td data-name="minutes to set up">
        {setUpMinutes === null ? <span className="soft">as the setting says</span> : formatCount(setUpMinutes)}
      </td>
      <td data-name="skill asked for">{skill ?? <span className="soft">none</span>}</td>
      <td data-name="crew">{crewName ?? <span className="soft">the plan chooses</span>}</td>
      <td data-name="way in and stairs">
        {walkPlan === null ? <span className="soft">not measured</span> : walkPlanInWords(walkPlan)}
      </td>
      <td className={css.change}>
        <button
          type="button"
          className={css.quiet}
          aria-label={`Change how ${areaName} is walked`}
          onClick={() => setIsChanging(true)}
        >
          Change
        </button>
      </td>
    </tr>
  )
}

function walkPlanInWords({ wayIn, stairs }: WalkPlan): string {
  const metres = (figure: number) => `${formatCount(figure)}\u00a0m`
  const place = wayIn && `in at east ${metres(wayIn.east)}, north ${metres(wayIn.north)}, level ${formatCount(wayIn.level)}`
  const climbs = stairs.map(
    ({ lowestLevel, highestLevel }) => `level ${formatCount(lowestLevel)} to ${formatCount(highestLevel)}`,
  )
  const ways = climbs.length === 0 ? 'no stairs' : `stairs ${climbs.join(', ')}`
  return `${place ?? 'way in not measured'}; ${ways}`
}
