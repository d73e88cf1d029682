import type { AreaWalk, Crew, DaysOff } from '@glandkeeper/contract/crews'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { formatDay } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { AskOnceRow } from './ask-once-row.tsx'
import css from './crews.module.css'
import { percentInWords, whoseInWords } from './days-off-draft.ts'
import { DaysOffForm } from './days-off-form.tsx'
import { areaWalks, crewsOfSite, daysOffOfSite, useRemoveDaysOff } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import { wordsOf } from './repeats.ts'

/** Days on which site, crew or area does not work. */
export function DaysOffOfSite() {
  const known = useQuery(daysOffOfSite)
  const crews = useQuery(crewsOfSite)
  const areas = useQuery(areaWalks)
  const unread = [known, crews, areas].find(({ data }) => data === undefined)
  return (
    <section className={css.section} aria-labelledby="the-days-off">
      <h2 id="the-days-off">Days off</h2>
      <p>
        A crew loses the hours of its days off and of those of the site. An area is not walked in a week of which it has every
        working day off.
      </p>
      {known.data && crews.data && areas.data ? (
        <AllDaysOff daysOff={known.data.daysOff} crews={crews.data.crews} areas={areas.data.walks} />
      ) : (
        <Reading query={unread ?? known} things="days off" />
      )}
    </section>
  )
}

interface AllDaysOffProps {
  daysOff: readonly DaysOff[]
  crews: readonly Crew[]
  areas: readonly AreaWalk[]
}

function AllDaysOff({ daysOff, crews, areas }: AllDaysOffProps) {
  const [isAdding, setIsAdding] = useState(false)
  return (
    <>
      {isAdding ? (
        <DaysOffForm crews={crews} areas={areas} onDone={() => setIsAdding(false)} />
      ) : (
        <button type="button" onClick={() => setIsAdding(true)}>
          Add days off
        </button>
      )}
      {daysOff.length === 0 ? (
        <p className="soft">No days off yet: add holidays and stops, so that no round is planned for them.</p>
      ) : (
        <DaysOffTable daysOff={daysOff} crews={crews} areas={areas} />
      )}
    </>
  )
}

function DaysOffTable({ daysOff, crews, areas }: AllDaysOffProps) {
  return (
    <table className={`${page.table} ${css.rows}`}>
      <caption>Days without rounds, by their first day</caption>
      <thead>
        <tr>
          <th scope="col">Whose</th>
          <th scope="col">From</th>
          <th scope="col">To</th>
          <th scope="col">Reason</th>
          <th scope="col">Comes back</th>
          <th scope="col" className={page.figure}>
            Hours lost
          </th>
          <th scope="col">To change</th>
        </tr>
      </thead>
      <tbody>
        {daysOff.map((days) => (
          <DaysOffRow key={days.daysOffId} days={days} whose={whoseInWords(days, crews, areas)} />
        ))}
      </tbody>
    </table>
  )
}

function DaysOffRow({ days, whose }: { days: DaysOff; whose: string }) {
  const remove = useRemoveDaysOff(days.daysOffId)
  return (
    <AskOnceRow
      act="Remove"
      label={`Remove ${days.reason}, ${whose}, from ${formatDay(days.startsOn)}`}
      follows={
        days.repeats === null
          ? 'The next plan counts these days as working days.'
          : 'All of them go, those still to come too: the next plan counts them as working days.'
      }
      yes="Remove these days off"
      no="Keep them"
      change={remove}
      columns={7}
      cells={<DaysOffCells days={days} whose={whose} />}
    />
  )
}

function DaysOffCells({ days, whose }: { days: DaysOff; whose: string }) {
  const { areaCode, reason, startsOn, endsOn, repeats, share } = days
  return (
    <>
      <th scope="row">{whose}</th>
      <td data-name="from">
        <time dateTime={startsOn}>{formatDay(startsOn)}</time>
      </td>
      <td data-name="to">
        <time dateTime={endsOn}>{formatDay(endsOn)}</time>
      </td>
      <td data-name="reason">{reason}</td>
      <td data-name="comes back">{wordsOf(repeats)}</td>
      <td className={page.figure} data-name="hours lost">
        {areaCode === null ? percentInWords(share) : 'closed'}
      </td>
    </>
  )
}
