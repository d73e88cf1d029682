import type { SiteFamily } from '@glandkeeper/contract/packings'
import { scaleLinear } from '@visx/scale'

export interface Bar {
  readonly left: number
  readonly right: number
  /** Solid where somebody of the site has vouched for the limits, dashed where they are defaults. */
  readonly isConfirmed: boolean
  readonly words: string
  /** Where the words stand: in the bar where they have room, after it where not. */
  readonly wordsX: number
}

interface LimitsRow {
  readonly name: string
  readonly labelY: number
  readonly barY: number
  readonly temperature: Bar
  readonly steamX: number
  readonly pressure: Bar
}

interface Tick {
  readonly x: number
  readonly label: string
}

export interface LimitsFrame {
  readonly rows: readonly LimitsRow[]
  readonly temperatureTicks: readonly Tick[]
  readonly pressureTicks: readonly Tick[]
  readonly top: number
  readonly bottom: number
  readonly height: number
}

export const BAR_HEIGHT = 18
const TOP = 34
const FOOT = 8
const PX_PER_LETTER = 6.6
const INSET = 6
/** Below this the name stands over its bars, not beside them. */
const NARROW = 700

const signed = (value: number) => String(Math.round(value)).replace('-', '−')

/** Every family on one axis of °C and one of bar, so that limits compare at a glance. */
export function limitsFrame(families: readonly SiteFamily[], width: number): LimitsFrame {
  const isNarrow = width < NARROW
  const labels = isNarrow ? 0 : 230
  const rowHeight = isNarrow ? 52 : 30
  const between = isNarrow ? 26 : 48
  const room = width - labels - between
  const split = labels + room * 0.64
  const lowest = Math.min(-200, ...families.map(({ figures }) => figures.lowestTemperature.value))
  const highest = Math.max(
    600,
    ...families.flatMap(({ figures }) => [figures.highestTemperature.value, figures.highestSteamTemperature.value]),
  )
  const most = Math.max(300, ...families.map(({ figures }) => figures.highestPressure.value))
  const celsius = scaleLinear<number>({ domain: [lowest, highest], range: [labels, split] })
  const bar = scaleLinear<number>({ domain: [0, most], range: [split + between, width - 1] })
  const tick = (scale: typeof celsius) => (value: number) => ({ x: scale(value), label: signed(value) })
  const rows = families.map(({ name, figures }, index): LimitsRow => {
    const {
      lowestTemperature: low,
      highestTemperature: high,
      highestSteamTemperature: steam,
      highestPressure: pressure,
    } = figures
    const top = TOP + index * rowHeight
    const barY = isNarrow ? top + 24 : top + 5
    return {
      name,
      labelY: isNarrow ? top + 16 : barY + 13,
      barY,
      temperature: placed(celsius(steam.value), {
        left: celsius(low.value),
        right: celsius(high.value),
        isConfirmed: low.confirmed !== null && high.confirmed !== null,
        words: `${signed(low.value)} to ${signed(high.value)}`,
      }),
      steamX: celsius(steam.value),
      pressure: placed(null, {
        left: bar(0),
        right: bar(pressure.value),
        isConfirmed: pressure.confirmed !== null,
        words: signed(pressure.value),
      }),
    }
  })
  const bottom = TOP + families.length * rowHeight
  return {
    rows,
    temperatureTicks: celsius.ticks(isNarrow ? 4 : 8).map(tick(celsius)),
    pressureTicks: bar.ticks(isNarrow ? 2 : 5).map(tick(bar)),
    top: TOP,
    bottom,
    height: bottom + FOOT,
  }
}

/** The upright of the steam limit is not written over. */
function placed(uprightX: number | null, bar: Omit<Bar, 'wordsX'>): Bar {
  const end = bar.left + bar.words.length * PX_PER_LETTER + 2 * INSET
  const isFree = uprightX === null || uprightX > end
  if (isFree && end < bar.right) return { ...bar, wordsX: bar.left + INSET }
  return { ...bar, wordsX: Math.max(bar.right, uprightX ?? 0) + INSET }
}
