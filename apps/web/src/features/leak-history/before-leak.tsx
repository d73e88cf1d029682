import type { BeforeLeak } from '@glandkeeper/contract/leaks'
import { beforeInWords } from '@glandkeeper/drawings/leak-words'
import { format } from 'date-fns'
import { atSite } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import css from './leak-history.module.css'
import { NipGaps } from './nip-gaps.tsx'

/** As many as the words name. */
const NIPS_SHOWN = 6

/** Only what is known, what points at a cause first and marked. */
export function Before({ before, timeZone }: { before: BeforeLeak; timeZone: string }) {
  const known = beforeInWords(before)
  return (
    <div className={css.before}>
      <h4>What changed before it leaked</h4>
      {known.length === 0 && <p className="soft">Too little was logged before it to compare.</p>}
      <dl>
        {known.map(({ name, says, standsOut }) => (
          <div key={name} className={standsOut ? css.standsOut : undefined}>
            <dt>
              {standsOut && <Pointer />}
              {name}
            </dt>
            <dd>
              {says}
              {name === 'Days between nips' && <NipGaps days={before.daysBetweenNips.slice(-NIPS_SHOWN)} />}
            </dd>
          </div>
        ))}
      </dl>
      {before.findings.length > 0 && <Findings findings={before.findings} timeZone={timeZone} />}
    </div>
  )
}

function Pointer() {
  return (
    <svg width="10" height="12" viewBox="0 0 10 12" role="img" aria-label="Stands out:">
      <path d="M1 1L9 6L1 11Z" className="hotfill" />
    </svg>
  )
}

function Findings({ findings, timeZone }: { findings: BeforeLeak['findings']; timeZone: string }) {
  return (
    <details>
      <summary>{counted(findings.length, 'finding')} in the ninety days before</summary>
      <ul>
        {findings.map(({ at, detail }) => (
          <li key={at + detail}>
            <time dateTime={at}>{format(atSite(new Date(at), timeZone), 'd MMM yyyy')}</time> {detail}
          </li>
        ))}
      </ul>
    </details>
  )
}
