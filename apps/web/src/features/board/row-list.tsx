import type { BoardRow } from '@glandkeeper/contract/board'
import { memo } from 'react'
import { formatDay } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import { GaugeScale } from '../../ui/gauge.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { StandingMark } from '../../ui/standing.tsx'
import css from './row-list.module.css'
import { Chance } from './chance.tsx'
import { ForecastGauge } from './forecast-gauge.tsx'
import { NextLook, Reserve, UsedUp, ValveLink } from './row-parts.tsx'
import { type Days, useDays } from './use-days.ts'
import { useRowsInSight, type RowsProps } from './use-rows-in-sight.ts'

/** The height of a line in the style sheet. */
const ROW_HEIGHT = 74

/** The board on a phone: where the gland stands, and under it what is to come. */
export function RowList(props: RowsProps) {
  const { holder, places, rowAt, failed, spaceAbove, spaceBelow } = useRowsInSight<HTMLUListElement>(props, ROW_HEIGHT)
  const { total } = props.top
  const { stopOn, today } = useDays()
  return (
    <>
      <div className={`soft ${css.legend}`}>
        <span role="status">{counted(total, 'valve')}</span>
        <GaugeScale />
        <span>Reserve, mm</span>
        <span className={css.wide}>Used up · chance before {stopOn === null ? 'the stop' : formatDay(stopOn)} · next look</span>
      </div>
      {failed && (
        <ProblemNote error={failed.error} again={{ words: 'Read these rows again', onPress: () => void failed.refetch() }} />
      )}
      <ul ref={holder} className={css.list} style={{ paddingTop: spaceAbove, paddingBottom: Math.max(spaceBelow, 0) }}>
        {places.map((place) => (
          <Line key={place} place={place} total={total} row={rowAt(place)} stopOn={stopOn} today={today} />
        ))}
      </ul>
    </>
  )
}

interface LineProps extends Days {
  place: number
  total: number
  row: BoardRow | undefined
}

const Line = memo(function Line({ place, total, row, ...days }: LineProps) {
  return (
    <li className={css.line} aria-posinset={place + 1} aria-setsize={total} aria-busy={row === undefined}>
      {row ? (
        <>
          <span className={css.tag}>
            <ValveLink row={row} />
          </span>
          <ForecastGauge row={row} height={32} {...days} />
          <span className={css.reserve}>
            <Reserve row={row} />
          </span>
          <StandingMark standing={row.standing} />
          <span className={css.ahead}>
            <UsedUp row={row} today={days.today} />
            <Chance chance={row.chanceBeforeStop} />
            <NextLook row={row} today={days.today} />
          </span>
        </>
      ) : (
        <span className="soft">…</span>
      )}
    </li>
  )
})
