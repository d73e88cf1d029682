import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { useEffect, useRef } from 'react'
import { formatMoment } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { asSentence } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import css from './leaks.module.css'
import { useCancelStudy, useMakeStudy, useReadStudyAgain } from './queries.ts'

interface StudyHeadProps {
  study: LeakStudy | null
  share: number | null
  fault: string | null
}

/** What the study stands on, and the way to a newer one. */
export function StudyHead({ study, share, fault }: StudyHeadProps) {
  const make = useMakeStudy()
  const cancel = useCancelStudy()
  useReadWhenDone(share)
  const error = make.error ?? cancel.error
  return (
    <div className={css.head}>
      {study && <MadeWhen study={study} />}
      {share !== null ? (
        <div className={css.progress} role="status">
          <span>Reading all entries, {Math.round(share * 100)}&nbsp;%</span>
          <progress value={share} aria-label="Making the study" />
          <button type="button" disabled={cancel.isPending} onClick={() => cancel.mutate()}>
            Stop
          </button>
        </div>
      ) : (
        <button type="button" disabled={make.isPending} onClick={() => make.mutate()}>
          {study ? 'Make it again' : 'Make the study'}
        </button>
      )}
      {share === null && fault !== null && (
        <p role="alert" className={css.fault}>
          {asSentence(fault)}
        </p>
      )}
      {error && <ProblemNote error={error} />}
    </div>
  )
}

function MadeWhen({ study: { madeAt, entries, entriesSince, valves } }: { study: LeakStudy }) {
  const { timeZone } = useMe().site
  return (
    <p>
      Made on {formatMoment(madeAt, timeZone)} from {counted(entries, 'entry', 'entries')} of {counted(valves, 'valve')};{' '}
      {entriesSince === 0 ? 'no entry has come since' : `${counted(entriesSince, 'entry', 'entries')} since`}.
    </p>
  )
}

/** The last look says that nothing is made any more: the study of the other periods, read before, is an old one. */
function useReadWhenDone(share: number | null) {
  const readAgain = useReadStudyAgain()
  const before = useRef(share)
  useEffect(() => {
    if (before.current !== null && share === null) void readAgain()
    before.current = share
  })
}
