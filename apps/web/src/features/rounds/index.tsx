import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { roundsQuery } from '../pocket/queries.ts'
import { fateOf, nextOpenStop } from './stops.ts'
import look from './rounds.module.css'

export { FitterSelect } from './fitter-select.tsx'

/** The address of a stop: the log page of its valve, on this round. */
export function stopAddress(roundId: string, tag: string): string {
  return `/valves/${encodeURIComponent(tag)}/log?round=${roundId}`
}

function useRound(roundId: string) {
  return useQuery(roundsQuery).data?.find((round) => round.roundId === roundId)
}

/** Where in the round this is: one box for each stop, filled where somebody has been. */
export function StopStrip({ roundId, tag }: { roundId: string; tag: string }) {
  const round = useRound(roundId)
  const { entries } = useOutbox()
  if (!round) return null
  const here = round.stops.find((stop) => stop.tag === tag)
  return (
    <div className={look.strip}>
      <Link to={`/rounds/${roundId}`}>{here ? `Stop ${here.position} of ${round.stops.length}` : round.name}</Link>
      <span className={look.boxes} aria-hidden="true">
        {round.stops.map((stop) => (
          <i
            key={stop.valveId}
            className={stop.tag === tag ? look.here : fateOf(stop, entries) === 'open' ? undefined : look.been}
          />
        ))}
      </span>
    </div>
  )
}

/** After an entry on a round: the one thing that comes next. */
export function NextStop({ roundId, valveId }: { roundId: string; valveId: string }) {
  const round = useRound(roundId)
  const { entries } = useOutbox()
  if (!round) return null
  const next = nextOpenStop(round, valveId, entries)
  if (next === null)
    return (
      <Link to={`/rounds/${roundId}`} className={`main ${look.next}`}>
        Round walked
        <small>every stop has an entry</small>
      </Link>
    )
  return (
    <Link to={stopAddress(roundId, next.tag)} className={`main ${look.next}`}>
      Next: {next.tag}
      <small>
        stop {next.position}, {next.areaName}, level {next.level}
      </small>
    </Link>
  )
}
