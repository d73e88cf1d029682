import type { OutageReview } from '@glandkeeper/contract/outages'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from 'react-router'
import { formatDay } from '../../platform/site-time.ts'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { reviewOf } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import css from './repacks.module.css'
import { Bars, groupLines } from './review-bars.tsx'
import { ReviewedValves } from './reviewed-valves.tsx'
import { followUpsOf, piecesInWords, reviewInWords } from './review-words.ts'

/** An outage looked back on: planned, done and not done; leaks within 30 days; follow-ups. */
export function ReviewPage() {
  const { outageId = '' } = useParams()
  const review = useQuery(reviewOf(outageId))
  const outage = review.data?.outage
  return (
    <main className={page.page}>
      <title>Outage looked back on · Glandkeeper</title>
      <div className={page.title}>
        <h1>{outage ? `Looking back on ${outage.name}` : 'Looking back on an outage'}</h1>
        {outage?.startedOn && outage.endedOn && (
          <span className="soft">
            {formatDay(outage.startedOn)} to {formatDay(outage.endedOn)}
          </span>
        )}
        <Link to="/repacks/outages">Outages</Link>
      </div>
      {review.data ? <Review review={review.data} /> : <Reading query={review} things="review" />}
    </main>
  )
}

function Review({ review }: { review: OutageReview }) {
  const { done, notDone, extra, valves, byCrew, byFamily } = review
  const followUps = followUpsOf(valves)
  if (valves.length === 0)
    return (
      <Empty title="No repack is on record for it">
        <p>None was planned, and none is entered yet. Entries that fitters send later count too.</p>
      </Empty>
    )
  return (
    <>
      <p className={css.sentence}>{reviewInWords(review)}</p>
      <section className={css.part} aria-labelledby="done">
        <h2 id="done">Planned and done</h2>
        <Bars
          lines={[
            {
              name: 'Repacks',
              pieces: [
                ['done', done],
                ['not done', notDone],
                ['extra', extra],
              ],
              says: piecesInWords([
                ['planned and done (solid)', done],
                ['planned and not done (dashed)', notDone],
                ['done without a plan (light)', extra],
              ]),
            },
            {
              name: 'Follow-ups',
              pieces: [
                ['done', followUps.made],
                ['due', followUps.due],
                ['lost', followUps.lost],
              ],
              says: piecesInWords([
                ['made (solid)', followUps.made],
                ['still due (dashed)', followUps.due],
                ['lost (red): their day is over and nobody was there', followUps.lost],
              ]),
            },
          ]}
        />
      </section>
      <Groups id="crews" title="Leaks within 30 days, by who did it" groups={byCrew} />
      <Groups id="families" title="Leaks within 30 days, by packing" groups={byFamily} />
      <ReviewedValves valves={valves} />
    </>
  )
}

function Groups({ id, title, groups }: { id: string; title: string; groups: OutageReview['byCrew'] }) {
  if (groups.length === 0) return null
  return (
    <section className={css.part} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <Bars lines={groupLines(groups)} />
    </section>
  )
}
