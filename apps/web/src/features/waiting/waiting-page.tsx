import type { FieldEvent } from '@glandkeeper/contract/events'
import { useState } from 'react'
import { ProblemError } from '../../platform/client.ts'
import { type OutboxEntry, putRight, setAside } from '../../platform/outbox/entries.ts'
import { outbox } from '../../platform/outbox/outbox.ts'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { formatMoment } from '../../platform/site-time.ts'
import { Empty } from '../../ui/empty.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import { PutRightForm } from '../readings/index.ts'
import { DeviceKeeps } from './device-keeps.tsx'
import { Photos } from './photos.tsx'
import { downloadUnsent } from './unsent-file.ts'
import look from './waiting.module.css'

/** What is still on this device: on its way, or refused and waiting for a person. */
export function WaitingPage() {
  const { entries, photos } = useOutbox()
  const me = useMe()
  const refused = entries.filter(({ state }) => state === 'refused')
  const own = entries.filter(({ state, personId }) => state === 'waiting' && personId === me.personId)
  const others = entries.filter(({ state, personId }) => state === 'waiting' && personId !== me.personId)
  return (
    <main className={look.page}>
      <title>On this device · Glandkeeper</title>
      <h1>On this device</h1>
      {entries.length === 0 && photos.length === 0 && (
        <Empty title="Nothing waits">
          <p>Every entry made on this device is in the register.</p>
        </Empty>
      )}
      {refused.length > 0 && (
        <section>
          <h2>Refused: these need you</h2>
          <ul className={look.list}>
            {refused.map((entry) => (
              <Refused key={entry.n} entry={entry} />
            ))}
          </ul>
        </section>
      )}
      <Waiting title="Waiting to be sent" entries={own} />
      <Waiting title="Made by somebody else: sent when they sign in" entries={others} />
      <Photos photos={photos} />
      {entries.length > 0 && (
        <div className={look.acts}>
          <button type="button" onClick={() => outbox.wake()}>
            Send now
          </button>
          <button type="button" onClick={() => downloadUnsent(entries)}>
            Download what is unsent
          </button>
        </div>
      )}
      <DeviceKeeps />
    </main>
  )
}

function Waiting({ title, entries }: { title: string; entries: readonly OutboxEntry[] }) {
  if (entries.length === 0) return null
  return (
    <section>
      <h2>{title}</h2>
      <ul className={look.list}>
        {entries.map((entry) => (
          <li key={entry.n}>
            <Words entry={entry} />
            {entry.problem && <p className="soft">Last try: {entry.problem.title}. It is tried again by itself.</p>}
          </li>
        ))}
      </ul>
    </section>
  )
}

function Refused({ entry }: { entry: OutboxEntry }) {
  const [isChanging, setIsChanging] = useState(false)
  const [isDownloaded, setIsDownloaded] = useState(false)
  const save = (event: FieldEvent) => void outbox.change((database) => putRight(database, entry, event))
  return (
    <li>
      <Words entry={entry} />
      {entry.problem && <ProblemNote error={new ProblemError(entry.problem)} />}
      {isChanging && <PutRightForm event={entry.event} words="Save and send again" onSave={save} />}
      <div className={look.acts}>
        {!isChanging && (
          <button type="button" onClick={() => setIsChanging(true)}>
            Put it right
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            downloadUnsent([entry])
            setIsDownloaded(true)
          }}
        >
          Download it
        </button>
        {isDownloaded && (
          <button type="button" onClick={() => void outbox.change((database) => setAside(database, entry.n))}>
            Set it aside: take it off this device
          </button>
        )}
      </div>
    </li>
  )
}

function Words({ entry: { tag, says, event } }: { entry: OutboxEntry }) {
  const { timeZone } = useMe().site
  return (
    <p>
      <b>{tag}</b> {says}, <time dateTime={event.takenAt}>{formatMoment(event.takenAt, timeZone)}</time>
    </p>
  )
}
