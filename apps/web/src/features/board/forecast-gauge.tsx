import type { BoardRow } from '@glandkeeper/contract/board'
import { formatMillimetres } from '@glandkeeper/units/format'
import { formatDay } from '../../platform/site-time.ts'
import { gaugeInWords, mostShownX, xAt } from '../../ui/gauge-geometry.ts'
import { Gauge } from '../../ui/gauge.tsx'
import { expectedGapAt } from './expected-gap.ts'
import css from './forecast.module.css'
import type { Days } from './use-days.ts'

const WIDTH = 120
const BLOCK_WIDTH = 7
/** Edges of the follower across the stem, of 32. */
const FLANGES = [2, 20]
const FLANGE = 10

interface ForecastGaugeProps extends Days {
  row: BoardRow
  height: number
}

/** The gauge, and dashed where the follower is expected to stand at the stop. */
export function ForecastGauge({ row, height, stopOn, today }: ForecastGaugeProps) {
  const expected = stopOn === null ? null : expectedGapAt(row, stopOn, today)
  if (expected === null || stopOn === null) return <Gauge {...row} height={height} />
  const then = expected.isUsedUp ? 'likely used up' : `about ${formatMillimetres(expected.gap)} expected`
  const x = Math.min(xAt(expected.gap), mostShownX)
  return (
    <svg
      width={WIDTH}
      height={height}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={`${gaugeInWords(row)}, ${then} by ${formatDay(stopOn)}`}
    >
      <Gauge {...row} height={height} />
      {FLANGES.map((y) => (
        <rect
          key={y}
          x={x}
          y={(y * height) / 32}
          width={BLOCK_WIDTH}
          height={(FLANGE * height) / 32}
          className={expected.isUsedUp ? css.usedUpThen : 'ghost'}
        />
      ))}
    </svg>
  )
}
