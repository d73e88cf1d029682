import { type EvidenceCheck, MOST_BYTES_OF_EVIDENCE } from '@glandkeeper/contract/evidence'
import { formatMoment } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { asSentence, capital } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { sizeInWords } from './evidence-words.ts'
import css from './evidence.module.css'
import { ChainMark, CheckMark } from './marks.tsx'
import { useCheckFile } from './queries.ts'

/** An exported file, from whom ever it came: is it what was exported here, and does the register still say the same? */
export function CheckFile() {
  const check = useCheckFile()
  const file = check.variables
  const isTooLarge = file !== undefined && file.size > MOST_BYTES_OF_EVIDENCE
  return (
    <section className={css.part} aria-labelledby="check">
      <h2 id="check">Check a file</h2>
      <label className={css.drop}>
        <span>Choose a signed file (JSON), or drop it here</span>
        <input
          type="file"
          accept=".json,application/json"
          // The same file, mended or spoilt meanwhile, can be chosen again.
          onClick={(event) => {
            event.currentTarget.value = ''
          }}
          onChange={(event) => {
            const chosen = event.target.files?.[0]
            if (chosen) check.mutate(chosen)
          }}
        />
      </label>
      {file && check.isPending && (
        <p role="status">
          Checking {file.name}, {sizeInWords(file.size)}
        </p>
      )}
      {file && check.error && (
        <>
          {isTooLarge && (
            <p>
              The largest file that is read here has {sizeInWords(MOST_BYTES_OF_EVIDENCE)}; this one has {sizeInWords(file.size)}.
            </p>
          )}
          <ProblemNote error={check.error} again={{ words: 'Check it again', onPress: () => check.mutate(file) }} />
        </>
      )}
      {file && check.data && <Result name={file.name} check={check.data} />}
    </section>
  )
}

function Result({ name, check }: { name: string; check: EvidenceCheck }) {
  const { checks, isGood } = check
  return (
    <>
      <div role="status" className={css.verdict}>
        <p className={isGood ? css.says : `${css.says} ${css.bad}`}>
          <ChainMark isWhole={isGood} />
          <b>{isGood ? 'Nothing in this file was changed' : 'This file does not stand'}</b>
        </p>
        <p className={css.file}>
          {name}
          <WhatItIs check={check} />
        </p>
      </div>
      <ul className={css.checks}>
        {checks.map((one) => (
          <li key={one.what} className={one.isGood ? undefined : css.bad}>
            <CheckMark isGood={one.isGood} />
            <span>
              <b>{one.isGood ? capital(one.what) : `Not so: ${one.what}`}.</b> {asSentence(one.says)}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

function WhatItIs({ check: { entries, madeAt, site } }: { check: EvidenceCheck }) {
  const { timeZone } = useMe().site
  // What cannot be read is no export, and holds nothing.
  if (site === null) return null
  return (
    <>
      : {counted(entries, 'entry', 'entries')} of {site}
      {madeAt !== null && `, exported on ${formatMoment(madeAt, timeZone)}`}.
    </>
  )
}
