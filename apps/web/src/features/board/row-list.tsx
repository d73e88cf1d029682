import type { BoardRow } from '@glandkeeper/contract/board'
import { memo } from 'react'
import { counted } from '../../ui/count.ts'
import { Gauge, GaugeScale } from '../../ui/gauge.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { StandingMark } from '../../ui/standing.tsx'
import css from './row-list.module.css'
import { Reserve, ValveLink } from './row-parts.tsx'
import { useRowsInSight, type RowsProps } from './use-rows-in-sight.ts'

/** The height of a line in the style sheet: a finger's width. */
const ROW_HEIGHT = 52

/** The board on a phone: one line for each valve. */
export function RowList(props: RowsProps) {
  const { holder, places, rowAt, failed, spaceAbove, spaceBelow } = useRowsInSight<HTMLUListElement>(props, ROW_HEIGHT)
  const { total } = props.top
  return (
    <>
      <div className={`soft ${css.legend}`}>
        <span role="status">{counted(total, 'valve')}</span>
        <GaugeScale />
        <span>Reserve, mm</span>
      </div>
      {failed && (
        <ProblemNote error={failed.error} again={{ words: 'Read these rows again', onPress: () => void failed.refetch() }} />
      )}
      <ul ref={holder} className={css.list} style={{ paddingTop: spaceAbove, paddingBottom: Math.max(spaceBelow, 0) }}>
        {places.map((place) => (
          <Line key={place} place={place} total={total} row={rowAt(place)} />
        ))}
      </ul>
    </>
  )
}

const Line = memo(function Line({ place, total, row }: { place: number; total: number; row: BoardRow | undefined }) {
  return (
    <li className={css.line} aria-posinset={place + 1} aria-setsize={total} aria-busy={row === undefined}>
      {row ? (
        <>
          <span className={css.tag}>
            <ValveLink row={row} />
          </span>
          <Gauge {...row} height={32} />
          <span className={css.reserve}>
            <Reserve row={row} />
          </span>
          <StandingMark standing={row.standing} />
        </>
      ) : (
        <span className="soft">…</span>
      )}
    </li>
  )
})
