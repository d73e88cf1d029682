import type { TimelineEntry } from '@glandkeeper/contract/events'
import { formatMillimetres } from '@glandkeeper/units/format'
import { useState } from 'react'
import { formatMoment } from '../../platform/site-time.ts'
import { PhotoStrip } from '../photos/index.tsx'
import { CorrectEntry } from './correct-entry.tsx'
import { timelineRows, type TimelineRow } from './standing-facts.ts'
import look from './timeline.module.css'

const FIRST_SHOWN = 12
const A_DAY = 86_400_000

interface TimelineProps {
  timeline: readonly TimelineEntry[]
  tag: string
  timeZone: string
}

/** Every entry ever made about this valve, newest first. Nothing is left out: what was corrected stands beside its correction. */
export function Timeline({ timeline, tag, timeZone }: TimelineProps) {
  const [showsAll, setShowsAll] = useState(false)
  const rows = timelineRows(timeline)
  const shown = showsAll ? rows : rows.slice(0, FIRST_SHOWN)
  return (
    <section className={look.section} aria-labelledby="entries">
      <h2 id="entries">Entries</h2>
      {rows.length === 0 && <p className="soft">Nobody has logged anything at this valve yet.</p>}
      <ol className={look.list}>
        {shown.map((row) => (
          <Row key={row.entry.event.id} row={row} tag={tag} timeZone={timeZone} />
        ))}
      </ol>
      {shown.length < rows.length && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show all {rows.length} entries
        </button>
      )}
    </section>
  )
}

/** What follows from a corrected entry is told where it is put right, not where it was wrong. */
function Row({ row: { entry, corrections }, tag, timeZone }: { row: TimelineRow; tag: string; timeZone: string }) {
  const isStruck = entry.standsAs === 'corrected' || entry.standsAs === 'taken back'
  const result = { reserveAfter: entry.reserveAfter, findings: entry.findings }
  return (
    <li className={look.row}>
      <EntryLine entry={entry} timeZone={timeZone} struck={isStruck ? entry.standsAs : null} result={isStruck ? null : result} />
      {entry.standsAs === 'as entered' && <CorrectEntry entry={entry} tag={tag} />}
      {corrections.map((correction, index) => {
        const isLast = index === corrections.length - 1
        return (
          <div key={correction.event.id} className={look.correction}>
            <EntryLine
              entry={correction}
              timeZone={timeZone}
              struck={isLast ? null : 'corrected again'}
              result={isLast ? result : null}
            />
          </div>
        )
      })}
    </li>
  )
}

interface EntryLineProps {
  entry: TimelineEntry
  timeZone: string
  struck: string | null
  result: Pick<TimelineEntry, 'reserveAfter' | 'findings'> | null
}

function EntryLine({ entry, timeZone, struck, result }: EntryLineProps) {
  const { photos, takenAt } = entry.event
  return (
    <div className={look.line}>
      <When entry={entry} timeZone={timeZone} />
      <div className={look.words}>
        <p>
          {struck === null ? entry.says : <s>{entry.says}</s>}
          {struck !== null && <b> {struck}</b>}
          {result && result.reserveAfter !== null && <span className="let"> {formatMillimetres(result.reserveAfter)} left</span>}
        </p>
        {result?.findings.map(({ code, detail }) => (
          <p key={code + detail} className={look.finding}>
            {detail}
          </p>
        ))}
        {photos && <PhotoStrip digests={photos} alt={`Photo with the entry of ${formatMoment(takenAt, timeZone)}`} />}
      </div>
      <p className={look.source}>
        <span>{entry.by}</span>
        <span>
          {entry.device} · <span className="let">no. {entry.position}</span>
        </span>
      </p>
    </div>
  )
}

function When({ entry: { event, receivedAt }, timeZone }: { entry: TimelineEntry; timeZone: string }) {
  const isLate = Math.abs(Date.parse(receivedAt) - Date.parse(event.takenAt)) > A_DAY
  return (
    <p className={look.when}>
      <time dateTime={event.takenAt}>{formatMoment(event.takenAt, timeZone)}</time>
      {isLate && (
        <span className="soft">
          received <time dateTime={receivedAt}>{formatMoment(receivedAt, timeZone)}</time>
        </span>
      )}
    </p>
  )
}
