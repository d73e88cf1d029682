import type { WearFit } from '@glandkeeper/contract/forecasts'
import page from '../../ui/page.module.css'
import { counted, formatCount } from '../../ui/count.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { formatMoment } from '../../platform/site-time.ts'
import { keepsRegister, useMe } from '../people/index.tsx'
import { percent } from './calibration-words.ts'
import css from './forecasts.module.css'
import { useLearnAnew } from './queries.ts'

/** The newest fit: when, from what, and how fast each group wears. */
export function WhatItRestsOn({ fit, running }: { fit: WearFit | null; running: number | null }) {
  return (
    <section className={css.section} aria-labelledby="rests-on">
      <h2 id="rests-on">What they rest on</h2>
      {fit === null ? (
        <p className={css.lead}>Nothing has been learned from this plant yet: forecasts start from values set by us.</p>
      ) : (
        <FitInWords fit={fit} />
      )}
      <LearnAnew running={running} />
      {fit !== null && fit.groups.length > 0 && <Groups fit={fit} />}
    </section>
  )
}

function FitInWords({ fit }: { fit: WearFit }) {
  const { timeZone } = useMe().site
  const millimetres = (value: number | null) => (value === null ? 'not known' : `${value.toFixed(1)}\u00a0mm`)
  return (
    <p className={css.lead}>
      Learned on {formatMoment(fit.fittedAt, timeZone)} ({fit.cause}) from {formatCount(fit.readings)} readings in{' '}
      {formatCount(fit.lives)} packing lives; {counted(fit.readingsLeftOut, 'reading')} far off the others left out. A reading is
      off by {fit.readingDeviation === null ? 'not known' : `${fit.readingDeviation.toFixed(2)}\u00a0mm`} (one standard
      deviation); bed-in takes {millimetres(fit.bedInFall)} besides wear
      {fit.bedInTime !== null && `, two thirds of it in ${Math.round(fit.bedInTime)}\u00a0days`}.
      {fit.lastReadingsWithin80 !== null &&
        ` The last reading of a life lay inside the 80\u00a0% band of the readings before it in ${percent(fit.lastReadingsWithin80)} of lives.`}
      {!fit.hasConverged && ' The search for these values ended before it had settled: learn anew when there are more readings.'}
    </p>
  )
}

function LearnAnew({ running }: { running: number | null }) {
  const learn = useLearnAnew()
  const mayAsk = keepsRegister(useMe())
  if (running !== null)
    return <p role="status">Learning from all lives: {percent(running)} done. Forecasts stay as they are until it ends.</p>
  if (!mayAsk) return null
  return (
    <>
      <button type="button" onClick={() => learn.mutate()} disabled={learn.isPending}>
        Learn anew
      </button>
      {learn.error !== null && <ProblemNote error={learn.error} />}
    </>
  )
}

function Groups({ fit }: { fit: WearFit }) {
  return (
    <details className={css.groups}>
      <summary>Wear by group, {counted(fit.groups.length, 'group')}</summary>
      <table className={`${page.table} ${css.table}`}>
        <thead>
          <tr>
            <th scope="col">Service and packing</th>
            <th scope="col">Lives</th>
            <th scope="col">Wear in a year</th>
            <th scope="col">two lives in three between</th>
          </tr>
        </thead>
        <tbody>
          {fit.groups.map(({ name, lives, ratePerYear, spread }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td data-heading="Lives" className={page.figure}>
                {formatCount(lives)}
              </td>
              <td data-heading="Wear in a year" className={page.figure}>
                {ratePerYear === null ? 'not known' : `${ratePerYear.toFixed(1)}\u00a0mm`}
              </td>
              <td data-heading="two lives in three between" className={page.figure}>
                {ratePerYear === null || spread === null
                  ? 'not known'
                  : `${(ratePerYear / spread).toFixed(1)} and ${(ratePerYear * spread).toFixed(1)}\u00a0mm`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}
