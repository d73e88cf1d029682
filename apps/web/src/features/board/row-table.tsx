import type { BoardRow } from '@glandkeeper/contract/board'
import { format, parseISO } from 'date-fns'
import { memo } from 'react'
import { counted } from '../../ui/count.ts'
import { GaugeScale } from '../../ui/gauge.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { StandingMark } from '../../ui/standing.tsx'
import { Chance, ChanceScale } from './chance.tsx'
import { ForecastGauge } from './forecast-gauge.tsx'
import { NextLook, Reserve, Seals, UsedUp, ValveLink } from './row-parts.tsx'
import css from './row-table.module.css'
import { type Days, useDays } from './use-days.ts'
import { useRowsInSight, type RowsProps } from './use-rows-in-sight.ts'

/** The height of a row in the style sheet. */
const ROW_HEIGHT = 31
const COLUMNS = 8

export function RowTable(props: RowsProps) {
  const { holder, places, rowAt, failed, spaceAbove, spaceBelow } = useRowsInSight<HTMLTableSectionElement>(props, ROW_HEIGHT)
  const { total } = props.top
  const { stopOn, today, isPlanned } = useDays()
  return (
    <>
      <p className={`soft ${css.legend}`}>
        <span role="status">{counted(total, 'valve')}</span>
        <span>
          Gauge: the box on its side. Solid block: follower where last measured. Dashed: worked out, or expected at the stop, in
          red where it likely used up by then. Upright line: keep clear.
        </span>
      </p>
      {failed && (
        <div className={css.fault}>
          <ProblemNote error={failed.error} again={{ words: 'Read these rows again', onPress: () => void failed.refetch() }} />
        </div>
      )}
      <table className={css.table} aria-rowcount={total + 1}>
        <Heading stop={stopInWords(stopOn, isPlanned)} />
        <tbody ref={holder}>
          <Space height={spaceAbove} />
          {places.map((place) => (
            <Row key={place} place={place} row={rowAt(place)} stopOn={stopOn} today={today} />
          ))}
          <Space height={spaceBelow} />
        </tbody>
      </table>
    </>
  )
}

/** Where no stop is planned the chances are counted to a day half a year ahead, and the heading does not call it a stop. */
function stopInWords(stopOn: string | null, isPlanned: boolean): string {
  if (stopOn === null) return 'the stop'
  return `${isPlanned ? 'the stop on ' : ''}${format(parseISO(stopOn), 'd MMMM yyyy')}`
}

function Heading({ stop }: { stop: string }) {
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
        <th scope="col" className={css.chance}>
          Chance used up before
          <br />
          {stop}
          <ChanceScale />
        </th>
        <th scope="col" className={css.date}>
          Used up,
          <br />
          four times in five
        </th>
        <th scope="col" className={css.standing}>
          Standing
        </th>
        <th scope="col" className={css.why}>
          Next look, and why
        </th>
      </tr>
    </thead>
  )
}

interface RowProps extends Days {
  place: number
  row: BoardRow | undefined
}

const Row = memo(function Row({ place, row, ...days }: RowProps) {
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
        <ForecastGauge row={row} height={27} {...days} />
      </td>
      <td className={css.seals}>
        <Seals row={row} />
      </td>
      <td className={css.reserve}>
        <Reserve row={row} />
      </td>
      <td className={css.chance}>
        <Chance chance={row.chanceBeforeStop} />
      </td>
      <td className={css.date}>
        <UsedUp row={row} today={days.today} />
      </td>
      <td className={css.standing}>
        <StandingMark standing={row.standing} />
      </td>
      <td className={css.why} title={row.why}>
        <NextLook row={row} today={days.today} />
        {row.nextLookOn === null ? row.why : `: ${row.why}`}
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
