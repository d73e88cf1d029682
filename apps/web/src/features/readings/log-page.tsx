import { useQuery } from '@tanstack/react-query'
import { useParams, useSearchParams } from 'react-router'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import { cardQuery } from '../pocket/queries.ts'
import { StopStrip } from '../rounds/index.tsx'
import { EntryForm } from './entry-form.tsx'
import { laidOver } from './laid-over.ts'
import { ValveBrief } from './valve-brief.tsx'
import look from './log-page.module.css'

const eventOf = ({ event }: OutboxEntry) => event

/** For one thumb, standing at the valve: what it is, and one big button for what is done most. */
export function LogPage() {
  const { tag = '' } = useParams()
  const [search] = useSearchParams()
  const roundId = search.get('round')
  const { timeZone } = useMe().site
  const card = useQuery(cardQuery(tag))
  const { entries } = useOutbox()
  const waiting = entries.filter((entry) => entry.tag === tag)
  const standing = card.data && laidOver(card.data, waiting.map(eventOf))
  return (
    <main className={look.page}>
      <title>{`Log an entry · ${tag} · Glandkeeper`}</title>
      {roundId !== null && <StopStrip roundId={roundId} tag={tag} />}
      {standing ? (
        <>
          <div className={look.brief}>
            <ValveBrief card={standing} waiting={waiting} timeZone={timeZone} />
          </div>
          <EntryForm key={standing.valve.valveId} card={standing} roundId={roundId} />
        </>
      ) : (
        <div className={look.brief}>
          <h1>{tag}</h1>
          {card.isError ? (
            <ProblemNote error={card.error} again={{ words: 'Load it again', onPress: () => void card.refetch() }} />
          ) : (
            <p className="soft" role="status">
              Looking the valve up
            </p>
          )}
        </div>
      )}
    </main>
  )
}
