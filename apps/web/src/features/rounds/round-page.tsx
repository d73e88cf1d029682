import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { Round, RoundStop } from '@glandkeeper/contract/rounds'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from 'react-router'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { formatDay } from '../../platform/site-time.ts'
import { StandingMark } from '../../ui/standing.tsx'
import { carriedQuery, roundsQuery } from '../pocket/queries.ts'
import { fateOf, type StopFate, stretchesOf } from './stops.ts'
import { stopAddress } from './index.tsx'
import { RoundActs } from './round-acts.tsx'
import look from './rounds.module.css'

/** A round on the phone: its stops as they are walked, each a target for a thumb. */
export function RoundPage() {
  const { roundId = '' } = useParams()
  const rounds = useQuery(roundsQuery)
  const carried = useQuery(carriedQuery)
  const { entries } = useOutbox()
  const round = rounds.data?.find((candidate) => candidate.roundId === roundId)
  if (!round)
    return (
      <main className={look.page}>
        <h1>{rounds.isPending ? 'Opening the round' : 'This round is not on this device'}</h1>
        {!rounds.isPending && (
          <p>
            It may have been closed, or was made since this device last heard of the server. <Link to="/rounds">All rounds</Link>
          </p>
        )}
      </main>
    )
  const cards = new Map(carried.data?.map((card) => [card.valve.valveId, card]))
  const open = round.stops.filter((stop) => fateOf(stop, entries) === 'open')
  return (
    <main className={look.page}>
      <title>{`${round.name} · Glandkeeper`}</title>
      <header className={look.head}>
        <h1>{round.name}</h1>
        <p className="soft">
          {formatDay(round.walkOn)} · {round.fitterName ?? 'whoever has time'} · {round.stops.length - open.length} of{' '}
          {round.stops.length} stops done
          {whatItTakes(round)}
        </p>
      </header>
      {stretchesOf(round.stops).map((stretch) => (
        <section key={stretch.stops[0]?.valveId}>
          <h2>
            {stretch.areaName} <span className="soft">level {stretch.level}</span>
          </h2>
          <ol className={look.stops}>
            {stretch.stops.map((stop) => (
              <Stop
                key={stop.valveId}
                roundId={roundId}
                stop={stop}
                card={cards.get(stop.valveId) ?? null}
                fate={fateOf(stop, entries)}
              />
            ))}
          </ol>
        </section>
      ))}
      <RoundActs round={round} />
    </main>
  )
}

/** Expected minutes, and the way where it has been measured. */
function whatItTakes({ minutes, metres, levels }: Round): string {
  const said = [
    minutes === null ? '' : durationInWords(minutes),
    metres === null ? '' : `${Math.round(metres / 10) * 10}\u00a0m on foot`,
    levels ? `${levels} ${levels === 1 ? 'level' : 'levels'} by stairs` : '',
  ].filter((part) => part !== '')
  return said.length === 0 ? '' : ` · ${said.join(', ')}`
}

/** @example durationInWords(223) // → '3 h 43 min' */
function durationInWords(minutes: number): string {
  const whole = Math.round(minutes)
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  return hours === 0 ? `${rest}\u00a0min` : `${hours}\u00a0h ${rest}\u00a0min`
}

interface StopProps {
  roundId: string
  stop: RoundStop
  /** Null where this device does not carry the valve yet. */
  card: ValveCard | null
  fate: StopFate
}

function Stop({ roundId, stop, card, fate }: StopProps) {
  const reserve = card?.state.reserve ?? null
  return (
    <li value={stop.position}>
      <Link to={stopAddress(roundId, stop.tag)} className={fate === 'open' ? look.stop : `${look.stop} ${look.done}`}>
        <b>
          <span className={look.place}>{stop.position}</span> {stop.tag}
        </b>
        <span>{card && <StandingMark standing={card.state.standing} />}</span>
        <span className={look.what}>{card?.valve.description ?? ''}</span>
        <span className={look.fate}>{fate === 'open' ? leftInWords(card, reserve) : fateInWords(stop, fate)}</span>
      </Link>
    </li>
  )
}

function leftInWords(card: ValveCard | null, reserve: number | null): string {
  if (!card) return ''
  return reserve === null ? 'gap not known' : reserve > 0 ? `${reserve.toFixed(1)} mm left` : 'none left'
}

function fateInWords({ visit }: RoundStop, fate: StopFate): string {
  if (fate === 'missed') return `missed: ${visit?.missed ?? ''}`
  return fate === 'visited' ? 'done' : 'done, on this device'
}
