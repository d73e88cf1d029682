import type { Crew } from '@glandkeeper/contract/crews'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { AskOnceRow } from './ask-once-row.tsx'
import { CrewForm } from './crew-form.tsx'
import css from './crews.module.css'
import { crewsOfSite, useRetireCrew } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'

/** People who walk rounds together: the table, a new one, a change, an end. */
export function Crews() {
  const known = useQuery(crewsOfSite)
  const [isAdding, setIsAdding] = useState(false)
  return (
    <section className={css.section} aria-labelledby="the-crews">
      <h2 id="the-crews">Crews</h2>
      {isAdding ? (
        <CrewForm onDone={() => setIsAdding(false)} />
      ) : (
        <button type="button" onClick={() => setIsAdding(true)}>
          Add a crew
        </button>
      )}
      {known.data ? <CrewTable crews={known.data.crews} /> : <Reading query={known} things="crews" />}
    </section>
  )
}

function CrewTable({ crews }: { crews: readonly Crew[] }) {
  if (crews.length === 0)
    return <p className="soft">No crew yet: add one, with the hours it has for walking, so that rounds can be planned.</p>
  return (
    <table className={`${page.table} ${css.rows}`}>
      <caption>Who walks rounds, and for how long in a week</caption>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col" className={page.figure}>
            Hours in a week
          </th>
          <th scope="col">Skills</th>
          <th scope="col">People</th>
          <th scope="col">To change</th>
        </tr>
      </thead>
      <tbody>
        {crews.map((crew) => (
          <CrewRow key={crew.crewId} crew={crew} />
        ))}
      </tbody>
    </table>
  )
}

function CrewRow({ crew }: { crew: Crew }) {
  const { crewId, name } = crew
  const [isChanging, setIsChanging] = useState(false)
  const retire = useRetireCrew(crewId)
  if (isChanging) {
    return (
      <tr>
        <td colSpan={5}>
          <CrewForm crew={crew} onDone={() => setIsChanging(false)} />
        </td>
      </tr>
    )
  }
  return (
    <AskOnceRow
      act="Retire"
      label={`Retire ${name}`}
      follows="Its areas go to other crews at the next planning, and its people are free for another crew. Rounds that are made stay."
      yes="Retire this crew"
      no="Keep it"
      change={retire}
      columns={5}
      cells={<CrewCells crew={crew} />}
      beside={
        <button type="button" className={css.quiet} aria-label={`Change ${name}`} onClick={() => setIsChanging(true)}>
          Change
        </button>
      }
    />
  )
}

function CrewCells({ crew: { name, hoursPerWeek, skills, people } }: { crew: Crew }) {
  return (
    <>
      <th scope="row">{name}</th>
      <td className={page.figure} data-name="hours in a week">
        {formatCount(hoursPerWeek)}
      </td>
      <td data-name="skills">{skills.length === 0 ? <span className="soft">none</span> : skills.join(', ')}</td>
      <td data-name="people">
        {people.length === 0 ? <span className="soft">nobody</span> : people.map((person) => person.name).join(', ')}
      </td>
    </>
  )
}
