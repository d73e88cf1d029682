import type { BoardRow } from '@glandkeeper/contract/board'
import { Link } from 'react-router'
import { lookInRow, usedUpInRow } from './row-dates.ts'
import css from './row-parts.module.css'

/** Spreads over its whole row, so that a press anywhere on the row opens the valve. */
export function ValveLink({ row }: { row: BoardRow }) {
  return (
    <Link to={`/valves/${encodeURIComponent(row.tag)}`} className={css.link}>
      {row.tag}
    </Link>
  )
}

export function Seals({ row }: { row: BoardRow }) {
  const medium = [row.fluid || row.service, row.temperature !== null && `${row.temperature}\u00a0°C`].filter(Boolean).join(', ')
  return (
    <span title={`${row.description}, ${medium}`}>
      {row.description} <span className={css.medium}>{medium}</span>
    </span>
  )
}

/** Shown as a steel rule is read, one decimal; the exact figure stays in the page. */
export function Reserve({ row }: { row: BoardRow }) {
  if (row.reserve === null) return <span className={css.unknown}>not known</span>
  return (
    <data
      value={row.reserve}
      className={row.gapIsInferred ? css.inferred : undefined}
      title={row.gapIsInferred ? 'worked out from turns' : undefined}
    >
      {row.reserve.toFixed(1).replace('-', '−')}
    </data>
  )
}

/** Four times in five it is used up within these months. */
export function UsedUp({ row, today }: { row: BoardRow; today: string }) {
  const said = usedUpInRow(row, today)
  return said === null ? <span className={css.unknown}>not known</span> : <span>{said}</span>
}

export function NextLook({ row, today }: { row: BoardRow; today: string }) {
  if (row.nextLookOn === null) return null
  return (
    <b>
      <time dateTime={row.nextLookOn}>{lookInRow(row.nextLookOn, today)}</time>
    </b>
  )
}
