import { useQuery } from '@tanstack/react-query'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './forecasts.module.css'
import { HowTheyTurnedOut } from './how-they-turned-out.tsx'
import { presentFit } from './queries.ts'
import { WhatItRestsOn } from './what-it-rests-on.tsx'

/** How far the forecasts of this plant are to be trusted: what they rest on, and how earlier ones turned out. */
export function ForecastsPage() {
  const known = useQuery(presentFit)
  return (
    <main className={page.page}>
      <title>Forecasts · Glandkeeper</title>
      <h1>Forecasts</h1>
      {known.data ? (
        <>
          <WhatItRestsOn {...known.data} />
          <HowTheyTurnedOut of="said" fittedAt={known.data.fit?.fittedAt ?? null} />
          <HowTheyTurnedOut of="replayed" fittedAt={known.data.fit?.fittedAt ?? null} />
          <HowCounted />
        </>
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Read the forecasts again', onPress: () => void known.refetch() }} />
      ) : (
        <p role="status">Reading what the forecasts rest on</p>
      )}
    </main>
  )
}

function HowCounted() {
  return (
    <section className={css.section} aria-labelledby="counted">
      <h2 id="counted">How this is counted</h2>
      <ul className={css.list}>
        <li>
          A forecast that was said spoke of no travel left: it came true at the first entry that shows none. A replayed one speaks
          of the travel that calls for a watch.
        </li>
        <li>
          A life that was repacked or topped up before, or goes on, is not thrown away: it counts as having lasted at least to its
          last reading.
        </li>
        <li>
          Glands that are repacked because their travel is nearly used up leave this count just before their date. Where most are,
          dates of no travel left look later than they were, and the points lie too low: that is why the replay asks for an
          earlier day.
        </li>
        <li>
          One forecast of a life counts for each number of readings, the first made. The last before the end would be one that
          ended soon, whatever it had said.
        </li>
        <li>Fewer than 10 lives say nothing, and no share is given for them.</li>
      </ul>
    </section>
  )
}
