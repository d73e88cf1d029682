import {
  exportEvidence,
  exportEvidenceCsv,
  type EvidenceScope,
  MOST_ENTRIES_ON_PAPER,
  printEvidence,
} from '@glandkeeper/contract/evidence'
import { useQuery } from '@tanstack/react-query'
import { useSearchParams } from 'react-router'
import { addressOf, ProblemError } from '../../platform/client.ts'
import { formatCount } from '../../ui/count.ts'
import { Reading } from '../../ui/reading.tsx'
import { ChooseEntries } from './choose-entries.tsx'
import { choiceOf, scopeOf } from './evidence-address.ts'
import { countInWords } from './evidence-words.ts'
import css from './evidence.module.css'
import { entriesIn } from './queries.ts'

/** Choose entries, see how many they are, take them along in one of three ways. */
export function TakeOut() {
  const [address] = useSearchParams()
  const choice = choiceOf(address)
  const asked = scopeOf(choice)
  const scope = 'scope' in asked ? asked.scope : null
  const counted = useQuery(entriesIn(scope))
  return (
    <section className={css.part} aria-labelledby="take-out">
      <h2 id="take-out">Take entries out</h2>
      <ChooseEntries choice={choice} />
      {'missing' in asked ? (
        <p role="status">{asked.missing}</p>
      ) : counted.data ? (
        <Counted scope={asked.scope} entries={counted.data.entries} />
      ) : isUnknown(counted.error) ? (
        <p role="status">
          {choice.of === 'valve' ? `No valve of this site has the tag ${choice.tag}.` : `This site has no area ${choice.area}.`}
        </p>
      ) : (
        <Reading query={counted} things="number of entries" />
      )}
    </section>
  )
}

function isUnknown(error: unknown): boolean {
  return error instanceof ProblemError && ['valve/unknown', 'area/unknown'].includes(error.problem.code)
}

function Counted({ scope, entries }: { scope: EvidenceScope; entries: number }) {
  const { words, mayTake } = countInWords(entries)
  return (
    <>
      <p role="status" className={css.count}>
        {words}
      </p>
      {mayTake && <Ways scope={scope} entries={entries} />}
    </>
  )
}

function Ways({ scope, entries }: { scope: EvidenceScope; entries: number }) {
  return (
    <ul className={css.ways}>
      <li>
        <a href={addressOf(exportEvidence, { query: scope })} download>
          Signed file (JSON)
        </a>
        <span>for an auditor: shows by itself whether anything in it was changed.</span>
      </li>
      <li>
        <a href={addressOf(exportEvidenceCsv, { query: scope })} download>
          Table (CSV)
        </a>
        <span>to sort and count in a spreadsheet. Not signed.</span>
      </li>
      <li>
        <a href={addressOf(printEvidence, { query: scope })} target="_blank" rel="noreferrer">
          Paper (PDF)
        </a>
        <span>
          to read and to file, in a new tab. Not signed.
          {entries > MOST_ENTRIES_ON_PAPER && ` Holds the first ${formatCount(MOST_ENTRIES_ON_PAPER)} of them only.`}
        </span>
      </li>
    </ul>
  )
}
