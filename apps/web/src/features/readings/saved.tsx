import { useEffect, useState } from 'react'
import { Link } from 'react-router'
import { ProblemError } from '../../platform/client.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { takenBackAtOnce } from './commands.ts'
import { type Delivery, useDelivery } from './delivery.ts'
import { NotSent } from './not-sent.tsx'
import look from './pad.module.css'

const SECONDS_TO_TAKE_BACK = 10

interface SavedProps {
  says: string
  delivery: Delivery
  tag: string
  onAnew: () => void
}

/** What the record now holds, what stood out about it, and for a short time the way back. */
export function Saved({ says, delivery: { kept, refused, findings }, tag, onAnew }: SavedProps) {
  const takingBack = useDelivery(tag)
  const isBack = takingBack.isSuccess && takingBack.data.refused.length === 0
  const takeBack = () => takingBack.mutate(kept.toReversed().map((entry) => takenBackAtOnce(entry, new Date())))
  return (
    <>
      <div role="status" className={look.saved}>
        <p>
          {isBack ? <b>Taken back: </b> : <b>Saved: </b>}
          {isBack ? <s>{says}</s> : says}
        </p>
        {!isBack &&
          findings.map(({ detail }) => (
            <p key={detail} className={look.finding}>
              {detail}
            </p>
          ))}
      </div>
      {[...refused, ...(takingBack.data?.refused ?? [])].map((problem) => (
        <ProblemNote key={problem.code + problem.detail} error={new ProblemError(problem)} />
      ))}
      {takingBack.isError && <NotSent error={takingBack.error} onAgain={() => takingBack.mutate(takingBack.variables)} />}
      {takingBack.isIdle && <TakeBack onPress={takeBack} />}
      <div className={look.pair}>
        <button type="button" onClick={onAnew}>
          Log another
        </button>
        <Link to={`/valves/${encodeURIComponent(tag)}`}>To the valve</Link>
      </div>
    </>
  )
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
