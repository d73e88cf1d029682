import type { showChain } from '@glandkeeper/contract/evidence'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { formatMoment } from '../../platform/site-time.ts'
import { asSentence } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { restsOnInWords, secondsInWords, verdictInWords } from './evidence-words.ts'
import css from './evidence.module.css'
import { ChainMark } from './marks.tsx'

type Proof = NonNullable<OkOf<typeof showChain>['proof']>

/** What the last proof found, with when and how long; of a break what it means and what to do. */
export function Verdict({ proof }: { proof: Proof }) {
  const { timeZone } = useMe().site
  const { isWhole, checkedAt, seconds, says, eventId } = proof
  return (
    <>
      <p className={isWhole ? css.says : `${css.says} ${css.bad}`}>
        <ChainMark isWhole={isWhole} />
        <b>{verdictInWords(proof)}</b>
      </p>
      <p>{isWhole ? restsOnInWords(proof) : asSentence(says)}</p>
      {!isWhole && <WhatToDo eventId={eventId} />}
      <p className="soft">
        Proved on {formatMoment(checkedAt, timeZone)}, in {secondsInWords(seconds)}.
      </p>
    </>
  )
}

function WhatToDo({ eventId }: { eventId: string | null }) {
  return (
    <>
      <p>
        Keep the register and its backups as they are, and tell who keeps the server. A backup or a signed file from before shows
        what stood there.
      </p>
      {eventId !== null && (
        <p className="soft">
          Number of that entry: <span className={css.id}>{eventId}</span>
        </p>
      )}
    </>
  )
}
