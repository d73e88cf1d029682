import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { showRegulated } from '@glandkeeper/contract/leak-rules'
import { scaleLinear } from '@visx/scale'

export type Percent = OkOf<typeof showRegulated>['percent']

interface QuarterBar {
  readonly x: number
  readonly width: number
  /** Null where none was monitored. */
  readonly top: number | null
  readonly quarter: string
  readonly year: string | null
  readonly counts: string
  readonly percent: string | null
  readonly isRunning: boolean
}

export interface PercentFrame {
  readonly height: number
  readonly left: number
  readonly right: number
  readonly base: number
  readonly levels: readonly { readonly y: number; readonly label: string }[]
  readonly allowed: number | null
  readonly bars: readonly QuarterBar[]
}

const LEFT = 34
/** For the figure of what is allowed, beside its line. */
const RIGHT = 38
const TOP = 22
const BARS = 120
const FOOT = 54
const WIDEST = 96

/** A column for each quarter, from zero, with the line of what is allowed; the quarter that runs is the last. */
export function percentFrame({ course, allowed }: Pick<Percent, 'course' | 'allowed'>, width: number): PercentFrame {
  const step = Math.min((width - LEFT - RIGHT) / Math.max(course.length, 1), WIDEST)
  const most = Math.max(1, (allowed ?? 0) * 1.25, ...course.map(({ percent }) => percent ?? 0))
  const scale = scaleLinear<number>({ domain: [0, most], range: [TOP + BARS, TOP] })
  const base = TOP + BARS
  return {
    height: base + FOOT,
    left: LEFT,
    right: LEFT + step * course.length,
    base,
    levels: scale.ticks(3).map((at) => ({ y: scale(at), label: `${at}` })),
    allowed: allowed === null ? null : scale(allowed),
    bars: course.map(({ period, numerator, denominator, percent }, place) => ({
      x: LEFT + place * step + step * 0.2,
      width: step * 0.6,
      top: percent === null ? null : scale(percent),
      quarter: period.split(' ')[1] ?? period,
      year: place === 0 || period.endsWith('Q1') ? (period.split(' ')[0] ?? null) : null,
      counts: denominator === 0 ? 'none' : `${numerator}/${denominator}`,
      percent: percent === null ? null : String(Number(percent.toFixed(1))),
      isRunning: place === course.length - 1,
    })),
  }
}
