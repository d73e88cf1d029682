import type { FieldEvent } from '@glandkeeper/contract/events'
import type { Valve } from '@glandkeeper/contract/valves'
import { useEffect, useState } from 'react'
import { Link } from 'react-router'
import { ProblemError } from '../../platform/client.ts'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { NextStop } from '../rounds/index.tsx'
import { takenBackAtOnce } from './commands.ts'
import type { SpotFinding } from './on-the-spot.ts'
import { useSave } from './save.ts'
import look from './pad.module.css'

const SECONDS_TO_TAKE_BACK = 10

interface SavedProps {
  says: string
  entries: readonly FieldEvent[]
  findings: readonly SpotFinding[]
  valve: Pick<Valve, 'tag' | 'valveId'>
  roundId: string | null
  onAnew: () => void
}

/** What the device or the record now holds, what stood out about it, and for a short time the way back. */
export function Saved({ says, entries, findings, valve: { tag, valveId }, roundId, onAnew }: SavedProps) {
  const takingBack = useSave(tag)
  const { refused, isDelivered, serverSays } = useFate(entries)
  const isBack = takingBack.state === 'saved'
  const takeBack = () => {
    const corrections = entries.toReversed().map((entry) => takenBackAtOnce(entry, new Date()))
    void takingBack.save(corrections, `${says}: taken back`)
  }
  // Told on the spot with what to do about it: the server's word for the same is not needed.
  const told = new Set(findings.map(({ code }) => code))
  return (
    <>
      <div role="status" className={look.saved}>
        <p>
          {isBack ? <b>Taken back: </b> : <b>{isDelivered ? 'Saved: ' : 'Saved on this device: '}</b>}
          {isBack ? <s>{says}</s> : says}
        </p>
        {!isBack &&
          findings.map((finding) => (
            <p key={finding.says} className={look.finding}>
              {finding.says} <b>{finding.nextStep}</b>
            </p>
          ))}
        {!isBack &&
          serverSays
            .filter(({ code }) => !told.has(code))
            .map(({ detail }) => (
              <p key={detail} className={look.finding}>
                {detail}
              </p>
            ))}
      </div>
      {refused.map((problem) => (
        <ProblemNote key={problem.code + problem.detail} error={new ProblemError(problem)} />
      ))}
      {refused.length > 0 && <Link to="/waiting">Put it right</Link>}
      {takingBack.fault !== null && <p role="alert">Not taken back: {takingBack.fault}</p>}
      {takingBack.state === 'typing' && refused.length === 0 && <TakeBack onPress={takeBack} />}
      {roundId !== null && <NextStop roundId={roundId} valveId={valveId} />}
      <div className={look.pair}>
        <button type="button" onClick={onAnew}>
          Log another
        </button>
        <Link to={`/valves/${encodeURIComponent(tag)}`}>To the valve</Link>
      </div>
    </>
  )
}

/** What became of entries since they were saved: still here, refused, or in the register with what it says of them. */
function useFate(entries: readonly FieldEvent[]) {
  const view = useOutbox()
  const ids = new Set(entries.map(({ id }) => id))
  const here = view.entries.filter(({ event }) => ids.has(event.id))
  const outcomes = [...view.outcomes].filter(([id]) => ids.has(id)).map(([, outcome]) => outcome)
  const said = outcomes.flatMap((outcome) => (outcome.outcome === 'accepted' ? outcome.findings : []))
  return {
    refused: here.flatMap(({ state, problem }) => (state === 'refused' && problem ? [problem] : [])),
    isDelivered: here.length === 0,
    // A nip and the reading after it may both bring the same finding.
    serverSays: [...new Map(said.map((finding) => [finding.detail, finding])).values()],
  }
}

function TakeBack({ onPress }: { onPress: () => void }) {
  const [seconds, setSeconds] = useState(SECONDS_TO_TAKE_BACK)
  useEffect(() => {
    const clock = setInterval(() => setSeconds((left) => left - 1), 1000)
    return () => clearInterval(clock)
  }, [])
  if (seconds <= 0) return null
  return (
    <button type="button" onClick={onPress} className={look.takeBack}>
      Take back <span aria-hidden="true">{seconds} s</span>
    </button>
  )
}
