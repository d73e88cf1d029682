import type { BoardRow } from '@glandkeeper/contract/board'
import { memo } from 'react'
import { counted } from '../../ui/count.ts'
import { Gauge, GaugeScale } from '../../ui/gauge.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { StandingMark } from '../../ui/standing.tsx'
import { Reserve, RunsOut, Seals, ValveLink } from './row-parts.tsx'
import css from './row-table.module.css'
import { useRowsInSight, type RowsProps } from './use-rows-in-sight.ts'

/** The height of a row in the style sheet. */
const ROW_HEIGHT = 31
const COLUMNS = 7

export function RowTable(props: RowsProps) {
  const { holder, places, rowAt, failed, spaceAbove, spaceBelow } = useRowsInSight<HTMLTableSectionElement>(props, ROW_HEIGHT)
  const { total } = props.top
  return (
    <>
      <p className={`soft ${css.legend}`}>
        <span role="status">{counted(total, 'valve')}</span>
        <span>
          Gauge: the box on its side. Solid block: follower where last measured, dashed: worked out from turns or not known.
          Upright line: keep clear.
        </span>
      </p>
      {failed && (
        <div className={css.fault}>
          <ProblemNote error={failed.error} again={{ words: 'Read these rows again', onPress: () => void failed.refetch() }} />
        </div>
      )}
      <table className={css.table} aria-rowcount={total + 1}>
        <Heading />
        <tbody ref={holder}>
          <Space height={spaceAbove} />
          {places.map((place) => (
            <Row key={place} place={place} row={rowAt(place)} />
          ))}
          <Space height={spaceBelow} />
        </tbody>
      </table>
    </>
  )
}

function Heading() {
  return (
    <thead>
      <tr aria-rowindex={1}>
        <th scope="col" className={css.tag}>
          Tag
        </th>
        <th scope="col" className={css.gauge}>
          <GaugeScale />
        </th>
        <th scope="col" className={css.seals}>
          Seals
        </th>
        <th scope="col" className={css.reserve}>
          Reserve, mm
        </th>
        <th scope="col" className={css.date}>
          Runs out,
          <br />
          straight line
        </th>
        <th scope="col" className={css.standing}>
          Standing
        </th>
        <th scope="col" className={css.why}>
          Why
        </th>
      </tr>
    </thead>
  )
}

const Row = memo(function Row({ place, row }: { place: number; row: BoardRow | undefined }) {
  if (!row) {
    return (
      <tr aria-rowindex={place + 2} aria-busy="true">
        <td colSpan={COLUMNS} className="soft">
          …
        </td>
      </tr>
    )
  }
  return (
    <tr aria-rowindex={place + 2}>
      <th scope="row" className={css.tag}>
        <ValveLink row={row} />
      </th>
      <td className={css.gauge}>
        <Gauge {...row} height={27} />
      </td>
      <td className={css.seals}>
        <Seals row={row} />
      </td>
      <td className={css.reserve}>
        <Reserve row={row} />
      </td>
      <td className={css.date}>
        <RunsOut row={row} />
      </td>
      <td className={css.standing}>
        <StandingMark standing={row.standing} />
      </td>
      <td className={css.why} title={row.why}>
        {row.why}
      </td>
    </tr>
  )
})

function Space({ height }: { height: number }) {
  if (height <= 0) return null
  return (
    <tr aria-hidden="true" className={css.space}>
      <td colSpan={COLUMNS} style={{ height }} aria-hidden="true" />
    </tr>
  )
}
