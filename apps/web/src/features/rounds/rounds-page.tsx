import type { Round } from '@glandkeeper/contract/rounds'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { formatDay } from '../../platform/site-time.ts'
import { Empty } from '../../ui/empty.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { useSyncView } from '../pocket/index.tsx'
import { roundsQuery } from '../pocket/queries.ts'
import { MakeRound } from './make-round.tsx'
import { useCloseRound } from './queries.ts'
import { fateOf } from './stops.ts'
import look from './rounds.module.css'

/** Rounds to walk: one's own first. A planner makes and closes them here. */
export function RoundsPage() {
  const me = useMe()
  const rounds = useQuery(roundsQuery)
  const { share } = useSyncView()
  const [isMaking, setIsMaking] = useState(false)
  const isMine = ({ fitterId }: Round) => fitterId === null || fitterId === me.personId
  const mine = rounds.data?.filter(isMine) ?? []
  const others = rounds.data?.filter((round) => !isMine(round)) ?? []
  return (
    <main className={look.page}>
      <title>Rounds · Glandkeeper</title>
      <header className={look.head}>
        <h1>Rounds</h1>
        {share !== null && (
          <p role="status" className="soft">
            Reading what this device carries along: {Math.round(share * 100)} %
          </p>
        )}
        <p>
          <Link to="/rounds/plan">Plan of rounds</Link> · <Link to="/rounds/due">due and not done</Link>
        </p>
      </header>
      {keepsRegister(me) &&
        (isMaking ? (
          <MakeRound onDone={() => setIsMaking(false)} />
        ) : (
          <button type="button" className={look.wide} onClick={() => setIsMaking(true)}>
            Make a round
          </button>
        ))}
      {rounds.data?.length === 0 && (
        <Empty title="No round to walk">
          {keepsRegister(me)
            ? 'Make one of the valves that are due for a look; it then is on the phones.'
            : 'A planner makes them. Any valve can be logged from its own page.'}
        </Empty>
      )}
      <RoundList title="To walk" rounds={mine} />
      <RoundList title="Of others" rounds={others} />
      <p>
        <Link to="/find">Find a valve by its tag or label</Link>
      </p>
    </main>
  )
}

function RoundList({ title, rounds }: { title: string; rounds: readonly Round[] }) {
  const { entries } = useOutbox()
  const me = useMe()
  const closing = useCloseRound()
  if (rounds.length === 0) return null
  return (
    <section>
      <h2>{title}</h2>
      <ul className={look.rounds}>
        {rounds.map((round) => (
          <li key={round.roundId}>
            <Link to={`/rounds/${round.roundId}`} className={look.stop}>
              <b>{round.name}</b>
              <span className={look.fate}>
                {round.stops.filter((stop) => fateOf(stop, entries) !== 'open').length} of {round.stops.length}
              </span>
              <span className={look.what}>
                {formatDay(round.walkOn)} · {round.fitterName ?? 'whoever has time'}
              </span>
            </Link>
            {keepsRegister(me) && (
              <button type="button" disabled={closing.isPending} onClick={() => closing.mutate(round.roundId)}>
                Close it
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}
