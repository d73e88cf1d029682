import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { scaleLinear } from '@visx/scale'
import { counted } from '../../ui/count.ts'

type Step = LeakStudy['meanCourse'][number]

export interface CourseFrame {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly base: number
  readonly height: number
  readonly course: string
  /** Between the limits, as stairs; empty where none are known. */
  readonly band: string
  readonly end: { readonly x: number; readonly y: number; readonly mean: number } | null
  readonly levels: readonly { readonly y: number; readonly label: string }[]
  readonly times: readonly { readonly x: number; readonly label: string; readonly watched: number }[]
}

const LEFT = 40
const RIGHT = 56
const TOP = 14
const HEIGHT = 210
const FOOT = 64
const DAYS_PER_YEAR = 365.25
const ONE_TIME_PX = 62
/** Years: a month, a quarter, half a year, and so on. */
const timesApart = [1 / 12, 0.25, 0.5, 1, 2, 5, 10]

const rounded = (value: number) => Math.round(value * 10) / 10

/** The mean number of leaks of a valve as a stair over the time it was watched, with limits, and valves still watched below. */
export function courseFrame(steps: readonly Step[], width: number): CourseFrame {
  const last = steps.at(-1)
  const years = Math.max(last?.days ?? 0, 1) / DAYS_PER_YEAR
  const most = Math.max(0.01, ...steps.map(({ mean, upper }) => upper ?? mean))
  const [left, right, base] = [LEFT, Math.max(width - RIGHT, LEFT + 1), TOP + HEIGHT]
  const x = scaleLinear<number>({ domain: [0, years], range: [left, right] })
  const y = scaleLinear<number>({ domain: [0, most], range: [base, TOP] })
  const at = (step: Step) => rounded(x(step.days / DAYS_PER_YEAR))
  const apart = timesApart.find((each) => x(each) - left >= ONE_TIME_PX) ?? years
  const times = Array.from({ length: Math.floor(years / apart + 1e-9) + 1 }, (_, index) => index * apart)
  return {
    left,
    right,
    top: TOP,
    base,
    height: base + FOOT,
    course: stair(steps, at, ({ mean }) => rounded(y(mean)), `M${left} ${base}`),
    band: bandOf(steps, at, (value) => rounded(y(value))),
    end: last ? { x: at(last), y: rounded(y(last.mean)), mean: last.mean } : null,
    levels: y.ticks(4).map((value) => ({ y: rounded(y(value)), label: String(value) })),
    times: times.map((year) => ({
      x: rounded(x(year)),
      label: timeInWords(year),
      watched: watchedAt(steps, year * DAYS_PER_YEAR),
    })),
  }
}

function stair(steps: readonly Step[], at: (step: Step) => number, height: (step: Step) => number, from: string): string {
  return steps.reduce((path, step) => `${path}H${at(step)}V${height(step)}`, from)
}

/** Forth along the upper limits, back along the lower ones. */
function bandOf(steps: readonly Step[], at: (step: Step) => number, y: (value: number) => number): string {
  const known = steps.flatMap((step) =>
    step.lower === null || step.upper === null ? [] : [{ x: at(step), lower: y(step.lower), upper: y(step.upper) }],
  )
  const [first] = known
  const last = known.at(-1)
  if (!first || !last || known.length < 2) return ''
  const forth = known.slice(1).reduce((path, { x, upper }) => `${path}H${x}V${upper}`, `M${first.x} ${first.upper}`)
  const back = known.toReversed().reduce((path, { x, lower }) => `${path}V${lower}H${x}`, '')
  return `${forth}${back}Z`
}

/** Valves watched at least so long: those of the next step, since between steps nobody knows better. */
function watchedAt(steps: readonly Step[], days: number): number {
  return steps.find((step) => step.days >= days)?.atRisk ?? steps.at(-1)?.atRisk ?? 0
}

/** @example timeInWords(0.5) // → '6 months' */
export function timeInWords(years: number): string {
  if (years === 0) return '0'
  if (years < 1) return counted(Math.round(years * 12), 'month')
  return years === 1 ? '1 year' : `${Number(years.toFixed(2))} years`
}
