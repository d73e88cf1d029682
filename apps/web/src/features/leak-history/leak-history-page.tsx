import { type LeakHistory, printLeakHistory } from '@glandkeeper/contract/leaks'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link, useLocation, useParams } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { Reading } from '../../ui/reading.tsx'
import { useMe } from '../people/index.tsx'
import { valveQuery } from '../valves/queries.ts'
import { CourseFigure } from './course-figure.tsx'
import { figuresOf } from './history-words.ts'
import css from './leak-history.module.css'
import { LeakPart } from './leak-part.tsx'
import { leakHistoryOf } from './queries.ts'

/** Why this one leaks: every leak of a valve, how it went, and what changed before it. */
export function LeakHistoryPage() {
  const { tag = '' } = useParams()
  const valve = useQuery(valveQuery(tag))
  const known = useQuery(leakHistoryOf(tag))
  return (
    <main className={page.page}>
      <title>{`Leaks of ${tag} · Glandkeeper`}</title>
      <header className={page.title}>
        <h1>
          Leaks of <span className={css.tag}>{tag}</span>
        </h1>
        {valve.data && (
          <span className="soft">{[valve.data.valve.description, valve.data.valve.service].filter(Boolean).join(', ')}</span>
        )}
      </header>
      <Ways tag={tag} />
      {valve.data && known.data ? (
        <Known key={valve.data.valve.valveId} valve={valve.data} history={known.data} now={new Date(known.dataUpdatedAt)} />
      ) : (
        <Reading query={valve.error ? valve : known} things="leaks of this valve" />
      )}
    </main>
  )
}

function Ways({ tag }: { tag: string }) {
  return (
    <nav aria-label="About this valve" className={css.ways}>
      <Link to={`/valves/${encodeURIComponent(tag)}`}>The valve</Link>
      <a href={addressOf(printLeakHistory, { params: { tag } })} target="_blank" rel="noreferrer">
        Print (PDF)
      </a>
      <Link to={`/leaks/evidence?tag=${encodeURIComponent(tag)}`}>Evidence of this valve</Link>
    </nav>
  )
}

interface KnownProps {
  valve: ValveHistory
  history: LeakHistory
  now: Date
}

function Known({ valve, history, now }: KnownProps) {
  const { timeZone } = useMe().site
  const shownId = useLocation().hash.slice(1)
  const { leaks } = history
  return (
    <>
      <dl className={css.figures}>
        {figuresOf(history, timeZone).map(({ name, says }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      {history.watchedSince !== null && (
        <CourseFigure valve={valve} leaks={leaks} shownId={shownId} now={now} timeZone={timeZone} />
      )}
      {leaks.length === 0 ? (
        <Empty title="No leak on record">
          <p>
            {history.watchedSince === null
              ? 'Nobody has logged anything at this valve yet.'
              : 'Whoever looked at it saw none. A leak stands here as soon as somebody logs one.'}
          </p>
        </Empty>
      ) : (
        <Leaks {...{ valve, leaks, shownId, now, timeZone }} />
      )}
    </>
  )
}

const FIRST_SHOWN = 6

interface LeaksProps extends Pick<KnownProps, 'valve' | 'now'> {
  leaks: LeakHistory['leaks']
  shownId: string
  timeZone: string
}

/** Newest first. A leak that an address names is there, however old. */
function Leaks({ valve, leaks, shownId, now, timeZone }: LeaksProps) {
  const [showsAll, setShowsAll] = useState(false)
  const rows = leaks.map((leak, place) => ({ leak, number: place + 1 })).toReversed()
  const isOld = rows.slice(FIRST_SHOWN).some(({ leak }) => leak.leakId === shownId)
  const shown = showsAll || isOld ? rows : rows.slice(0, FIRST_SHOWN)
  const photos = new Map(valve.timeline.map(({ event }) => [event.id, event.photos ?? []]))
  return (
    <section className={css.leaks} aria-labelledby="leaks">
      <h2 id="leaks">Each leak, the newest first</h2>
      {shown.map(({ leak, number }) => (
        <LeakPart key={leak.leakId} {...{ leak, number, photos, now, timeZone }} isShown={leak.leakId === shownId} />
      ))}
      {shown.length < rows.length && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show all {rows.length} leaks
        </button>
      )}
    </section>
  )
}
