import { scaleLinear } from '@visx/scale'

export interface MonthCount {
  readonly month: string
  readonly leaks: number
}

export interface MonthBar extends MonthCount {
  readonly left: number
  readonly width: number
  /** Of the strip it stands in. */
  readonly base: number
  readonly stripTop: number
  readonly top: number
  /** Height of the same month a year before; null where that is not counted. */
  readonly yearBefore: number | null
  readonly before: MonthCount | null
  /** Base line of its figure: above the bar, and clear of the line of the year before. */
  readonly figureY: number
  readonly label: string
  /** The year, where it begins or the strip does. */
  readonly year: string | null
}

interface Strip {
  readonly top: number
  readonly base: number
  readonly levels: readonly { readonly y: number; readonly label: string }[]
}

export interface MonthFrame {
  readonly left: number
  readonly right: number
  readonly height: number
  readonly strips: readonly Strip[]
  readonly bars: readonly MonthBar[]
}

const YEAR = 12
const LEFT = 34
const HEAD = 20
const FOOT = 40
const BARS = { one: 150, two: 96 } as const
/** Narrower than this, a finger would not hit one of 25 months in a row: they stand in two, each month under its own. */
const ONE_STRIP_FROM_PX = 700
const MONTHS = 'JFMAMJJASOND'
const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** Bars of leaks by month, all to one scale from zero; in two strips the same month of both years stands one above the other. */
export function monthFrame(months: readonly MonthCount[], width: number): MonthFrame {
  const isOne = width >= ONE_STRIP_FROM_PX
  const rows = isOne || months.length <= YEAR ? [months] : [months.slice(0, YEAR), months.slice(YEAR)]
  const barHeight = isOne ? BARS.one : BARS.two
  const columns = Math.max(1, ...rows.map((row) => row.length))
  const step = (width - LEFT) / columns
  const most = Math.max(1, ...months.map(({ leaks }) => leaks))
  const scale = scaleLinear<number>({ domain: [0, most], range: [0, barHeight], nice: false })
  const stripHeight = HEAD + barHeight + FOOT
  const strips = rows.map((_, row): Strip => {
    const base = row * stripHeight + HEAD + barHeight
    const ticks = scale.ticks(3).filter((at) => Number.isInteger(at))
    return { top: base - barHeight, base, levels: ticks.map((at) => ({ y: base - scale(at), label: String(at) })) }
  })
  const bars = months.map((each, index): MonthBar => {
    const row = rows.length === 2 && index >= YEAR ? 1 : 0
    const column = row === 1 ? index - YEAR : index
    const { base, top: stripTop } = strips[row] ?? { base: HEAD + barHeight, top: HEAD }
    const before = months[index - YEAR] ?? null
    const month = Number(each.month.slice(5)) - 1
    const top = base - scale(each.leaks)
    const yearBefore = before && base - scale(before.leaks)
    return {
      ...each,
      left: LEFT + column * step,
      width: step,
      base,
      stripTop,
      top,
      yearBefore,
      before,
      figureY: figureAbove(top, yearBefore),
      label: (step >= 30 ? NAMES[month] : MONTHS[month]) ?? '',
      year: month === 0 || column === 0 ? each.month.slice(0, 4) : null,
    }
  })
  return { left: LEFT, right: LEFT + columns * step, height: stripHeight * rows.length, strips, bars: withoutCrowdedYears(bars) }
}

const FIGURE_PX = 14

function figureAbove(top: number, yearBefore: number | null): number {
  const isCrossed = yearBefore !== null && yearBefore < top && yearBefore > top - FIGURE_PX - 4
  return (isCrossed ? yearBefore : top) - 5
}

const A_YEAR_PX = 32

/** A strip that begins in autumn names its year, unless the next one begins too near. */
function withoutCrowdedYears(bars: readonly MonthBar[]): MonthBar[] {
  return bars.map((bar, index) => {
    const next = bars.slice(index + 1).find(({ year }) => year !== null)
    const isCrowded = next && next.base === bar.base && next.left - bar.left < A_YEAR_PX
    return isCrowded ? { ...bar, year: null } : bar
  })
}
