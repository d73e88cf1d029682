import type { showChain } from '@glandkeeper/contract/evidence'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { useQuery } from '@tanstack/react-query'
import { formatMoment } from '../../platform/site-time.ts'
import { counted, formatCount } from '../../ui/count.ts'
import { Reading } from '../../ui/reading.tsx'
import { useMe } from '../people/index.tsx'
import { ChainDrawing } from './chain-drawing.tsx'
import { sinceInWords } from './evidence-words.ts'
import css from './evidence.module.css'
import { Letters } from './letters.tsx'
import { Proving } from './proving.tsx'
import { chainOfSite } from './queries.ts'
import { Verdict } from './verdict.tsx'

type Chain = OkOf<typeof showChain>

/** The state of the chain: what was proved when, what was not, and a button to prove it now. */
export function WholeRecord() {
  const known = useQuery(chainOfSite)
  return (
    <section className={css.part} aria-labelledby="whole">
      <h2 id="whole">Is the record whole?</h2>
      <p>
        Every entry carries a mark worked out from itself and from the entry before it: the entries form a chain. Change, remove
        or add one afterwards, and the chain is broken there.
      </p>
      {known.data ? <Shown chain={known.data} /> : <Reading query={known} things="record" />}
    </section>
  )
}

function Shown({ chain }: { chain: Chain }) {
  const { entries, proof, lastSeal, fault } = chain
  return (
    <>
      <div role="status" className={css.verdict}>
        {proof === null ? <NotProved entries={entries} /> : <Verdict proof={proof} />}
      </div>
      {proof !== null && proof.isWhole && <p>{sinceInWords(proof.entries, entries)}</p>}
      {entries > 0 && (
        <ChainDrawing
          entries={entries}
          provedTo={proof === null ? 0 : proof.isWhole ? proof.entries : (proof.position ?? 1) - 1}
          brokenAt={proof?.position ?? null}
          sealedAt={lastSeal?.position ?? null}
        />
      )}
      <Proving share={chain.share} />
      {chain.share === null && fault !== null && (
        <p role="alert" className={css.bad}>
          The last proof did not come to an end: {fault}
        </p>
      )}
      <Signed chain={chain} />
    </>
  )
}

function NotProved({ entries }: { entries: number }) {
  return (
    <p>
      <b>Not proved since the server began.</b> {counted(entries, 'entry waits', 'entries wait')} to be looked at.
    </p>
  )
}

/** For who compares heads with a letter or an older file. */
function Signed({ chain: { head, entries, lastSeal } }: { chain: Chain }) {
  const { timeZone } = useMe().site
  return (
    <>
      <p className="soft">
        {lastSeal === null
          ? 'No head of the chain has been signed yet: each export and each good proof signs one.'
          : `The head was last signed on ${formatMoment(lastSeal.madeAt, timeZone)}, at entry ${formatCount(lastSeal.position)}. Each export and each good proof signs it again.`}
      </p>
      {head !== '' && (
        <details className={css.expert}>
          <summary>Head of the chain</summary>
          <p>
            The mark of the last entry, number {formatCount(entries)}. It is a hash (SHA-256): 64 letters and digits that come out
            different when anything before them is different.
          </p>
          <p>
            <Letters of={head} />
          </p>
        </details>
      )}
    </>
  )
}
