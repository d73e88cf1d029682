import type { ValveCard } from '@glandkeeper/contract/pocket'
import { Gauge } from '../../ui/gauge.tsx'
import { leastGap, xAt } from '../../ui/gauge-geometry.ts'
import look from './log-page.module.css'

const WIDTH = 358
const TIMES = WIDTH / 120
const GAUGE_TOP = 28
const SCALE_TOP = 169
const BLOCK_AND_AIR = 12

/** The gauge of the board at three times its size, its figures in writing, with a scale under it. */
export function BigGauge({ history: { valve, state } }: { history: ValveCard }) {
  const { keepClear, noseLength } = valve.gland
  const x = (mm: number) => xAt(mm) * TIMES
  const least = leastGap(state)
  const nowAt = Math.max(least === null ? 0 : Math.min(x(least), x(18)) + BLOCK_AND_AIR, x(keepClear) + 14)
  return (
    <svg viewBox={`0 0 ${WIDTH} 198`} className={look.gauge}>
      <svg x="0" y={GAUGE_TOP} width={WIDTH} height="136" viewBox="0 0 120 45.6">
        <Gauge
          gapLeft={state.gapLeft}
          gapRight={state.gapRight}
          gapIsInferred={state.gapIsInferred}
          keepClear={keepClear}
          noseLength={noseLength}
          height={45.6}
        />
      </svg>
      <text className="hot" x={x(keepClear) + 4} y="16" textAnchor="end">
        keep clear {keepClear}
      </text>
      <text x={Math.min(nowAt, WIDTH - 104)} y="16">
        {gapsInWords(state)}
      </text>
      <path
        d={`M${x(0)} ${SCALE_TOP}H${x(15)}${[0, 5, 10, 15].map((mm) => `M${x(mm)} ${SCALE_TOP}v7`).join('')}`}
        className="thin"
      />
      {[0, 5, 10, 15].map((mm) => (
        <text key={mm} x={x(mm)} y={SCALE_TOP + 22} textAnchor="middle">
          {mm === 15 ? '15 mm' : mm}
        </text>
      ))}
      <text x="0" y={SCALE_TOP + 22} className={look.left}>
        {leftInWords(state.reserve)}
      </text>
    </svg>
  )
}

function leftInWords(reserve: number | null): string {
  if (reserve === null) return 'left: not known'
  return reserve > 0 ? `${reserve.toFixed(1)} mm left` : 'none left'
}

function gapsInWords({ gapLeft, gapRight, gapIsInferred }: ValveCard['state']): string {
  if (gapLeft === null && gapRight === null) return 'gap not measured'
  const side = (gap: number | null) => (gap === null ? '?' : gap.toFixed(1))
  return `${gapIsInferred ? 'about' : 'now'} ${side(gapLeft)} | ${side(gapRight)}`
}
