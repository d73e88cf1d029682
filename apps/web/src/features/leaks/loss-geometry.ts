import { scaleLinear } from '@visx/scale'

interface AreaLoss {
  readonly name: string
  readonly kilogramsPerHour: { readonly middle: number; readonly low: number; readonly high: number }
}

export interface LossBar {
  readonly name: string
  readonly nameX: number
  readonly nameY: number
  readonly y: number
  readonly left: number
  readonly width: number
  readonly from: number
  readonly to: number
  /** The interval goes on beyond the end of the scale. */
  readonly isBeyond: boolean
  readonly wordsX: number
}

const BAR = 18
const ROW = { desk: 30, phone: 52 } as const
const NARROW = 700
const NAMES = 210
const WORDS = 170
/** A wide interval of one area does not press the bars of all others to nothing. */
const MOST_BEYOND = 2.5

/** Bars from zero, all to one scale, each with its interval; on a phone the name stands above its bar. */
export function lossBars(
  areas: readonly AreaLoss[],
  width: number,
): { readonly bars: readonly LossBar[]; readonly height: number } {
  const isNarrow = width < NARROW
  const left = isNarrow ? 0 : NAMES
  const row = isNarrow ? ROW.phone : ROW.desk
  const most = Math.max(0, ...areas.map(({ kilogramsPerHour: { middle } }) => middle))
  const reach = Math.max(0, ...areas.map(({ kilogramsPerHour: { high } }) => high))
  const top = Math.min(reach, most * MOST_BEYOND) || 1
  const x = scaleLinear<number>({ domain: [0, top], range: [left, Math.max(width - WORDS, left + 1)], clamp: true })
  const bars = areas.map(({ name, kilogramsPerHour: { middle, low, high } }, index): LossBar => {
    const y = index * row + (isNarrow ? 24 : 6)
    return {
      name,
      nameX: 0,
      nameY: isNarrow ? y - 7 : y + 14,
      y,
      left,
      width: x(middle) - left,
      from: x(low),
      to: x(high),
      isBeyond: high > top,
      wordsX: Math.max(x(middle), x(high)) + 10,
    }
  })
  return { bars, height: areas.length * row + 4 }
}

export const BAR_HEIGHT = BAR
