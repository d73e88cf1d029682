import type { LeakRow } from '@glandkeeper/contract/leaks'
import page from '../../ui/page.module.css'
import { useMe } from '../people/index.tsx'
import { GradeMark } from './grade-mark.tsx'
import { TaggedValve } from './leak-links.tsx'
import { dayAtSite, doneInWords, furtherInWords, goneInWords, packingInWords, worstInWords } from './leak-words.ts'
import css from './leaks.module.css'

const headings = ['Valve', 'First seen', 'At worst', 'What was done', 'Seen gone', 'Packing it came in'] as const

export function LeakTable({ rows }: { rows: readonly LeakRow[] }) {
  return (
    <table className={`${page.table} ${css.table}`}>
      <thead>
        <tr>
          {headings.map((heading) => (
            <th key={heading} scope="col">
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((leak) => (
          <Row key={leak.leakId} leak={leak} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ leak }: { leak: LeakRow }) {
  const { timeZone } = useMe().site
  const { tag, description, service, areaCode, openedAt, state } = leak
  return (
    <tr>
      <th scope="row">
        <TaggedValve tag={tag} /> {description}
        <span className={`soft ${css.line}`}>
          {areaCode}, {service}
        </span>
      </th>
      <td>
        <time dateTime={openedAt}>{dayAtSite(openedAt, timeZone)}</time>
      </td>
      <td>
        <Worst leak={leak} />
      </td>
      <td>
        {doneInWords(leak, timeZone)}
        <Further leak={leak} />
      </td>
      <td className={state === 'open' ? 'hot' : undefined}>{goneInWords(leak, timeZone)}</td>
      <td>{packingInWords(leak)}</td>
    </tr>
  )
}

export function Worst({ leak }: { leak: LeakRow }) {
  const words = worstInWords(leak)
  return leak.worst === null ? <span className={css.measured}>{words}</span> : <GradeMark grade={leak.worst} words={words} />
}

export function Further({ leak }: { leak: LeakRow }) {
  return furtherInWords(leak).map((words) => (
    <span key={words} className={`soft ${css.line}`}>
      {words}
    </span>
  ))
}
