import type { LeakRow } from '@glandkeeper/contract/leaks'
import { capital } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { TaggedValve } from './leak-links.tsx'
import { Further, Worst } from './leak-table.tsx'
import { dayAtSite, doneInWords, goneInWords, packingInWords } from './leak-words.ts'
import css from './leaks.module.css'

/** For a phone: the valve and how it leaks on top, what became of it below. */
export function LeakCards({ rows }: { rows: readonly LeakRow[] }) {
  const { timeZone } = useMe().site
  return (
    <ol className={css.cards}>
      {rows.map((leak) => (
        <li key={leak.leakId}>
          <div className={css.cardHead}>
            <TaggedValve tag={leak.tag} />
            <Worst leak={leak} />
          </div>
          <p>
            {leak.description} <span className="soft">{`${leak.areaCode}, ${leak.service}`}</span>
          </p>
          <p>
            First seen on <time dateTime={leak.openedAt}>{dayAtSite(leak.openedAt, timeZone)}</time>
          </p>
          <p>
            Done: {doneInWords(leak, timeZone)}
            <Further leak={leak} />
          </p>
          <p className={leak.state === 'open' ? 'hot' : undefined}>{capital(goneInWords(leak, timeZone))}</p>
          <p className="soft">{capital(packingInWords(leak))}</p>
        </li>
      ))}
    </ol>
  )
}
