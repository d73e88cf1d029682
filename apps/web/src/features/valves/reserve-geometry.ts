import type { GlandState, ReservePoint } from '@glandkeeper/contract/reserve'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { scaleLinear, scaleTime } from '@visx/scale'
import { differenceInDays, differenceInMonths, format, parseISO, startOfDay } from 'date-fns'
import { atSite } from '../../platform/site-time.ts'

export interface PlotInput extends Pick<ValveHistory, 'points' | 'lives'> {
  readonly state: Pick<GlandState, 'reserve' | 'forecast' | 'standing'>
  readonly now: Date
  readonly plannedStopOn: string | null
  readonly timeZone: string
  readonly width: number
}

/** Where things lie: one time axis for all three rows, so that a cause stands over its effect. */
export interface PlotFrame {
  readonly x: (isoMoment: string) => number
  readonly y: (mm: number) => number
  readonly xOfDay: (isoDate: string) => number
  readonly left: number
  readonly right: number
  readonly today: number
  readonly levels: readonly { readonly mm: number; readonly y: number }[]
  readonly times: readonly { readonly x: number; readonly label: string }[]
  readonly nipLine: number
  readonly leakLine: number
  readonly bottom: number
  readonly height: number
}

interface Course {
  readonly path: string
  readonly isInferred: boolean
}

interface LifeBand {
  readonly left: number
  readonly right: number
  readonly isOdd: boolean
  readonly lines: readonly string[]
}

const LEFT = 38
const RIGHT = 10
/** For the word on the stop, over the plot. */
export const TOP = 22
const LIFE_STRIP = TOP + 58
/** For the figure of today over a level that is the highest. */
const HEADROOM = 46
/** In px: closer than this two steps cannot be told apart. */
const ONE_MOMENT = 0.5
const LEAST_DAYS = 120
/** A gland packed a short while ago has a future far longer than its past. */
const LEAST_DAYS_AHEAD = 400
const DAY = 86_400_000
const PX_PER_LETTER = 6.4

/** A fifth of the width is left for what is to come, more where the stop or most of the fan lies a little later. */
export function plotFrame(input: PlotInput): PlotFrame {
  const { points, now, width, timeZone, state } = input
  const site = (isoMoment: string) => atSite(new Date(isoMoment), timeZone)
  const today = atSite(now, timeZone)
  const oldest = [...points.map(({ at }) => at), ...input.lives.flatMap(({ from }) => from ?? [])].map((at) => site(at).getTime())
  const start = Math.min(...oldest, today.getTime() - LEAST_DAYS * DAY)
  const until = today.getTime() + aheadOf(state.forecast, today, today.getTime() - start)
  const right = width - RIGHT
  const time = scaleTime<number>({ domain: [new Date(start), new Date(until)], range: [LEFT, right] })
  const reserveHeight = width < 480 ? 220 : 288
  const zero = LIFE_STRIP + HEADROOM + reserveHeight
  const known = [...points.map(({ reserve }) => reserve), state.forecast?.level ?? null].filter((mm) => mm !== null)
  const level = scaleLinear<number>({
    domain: [Math.min(0, ...known), Math.max(2, ...known)],
    range: [zero, LIFE_STRIP + HEADROOM],
  })
  const nipLine = zero + 74
  const leakLine = nipLine + 68
  const bottom = leakLine + 16
  return {
    x: (isoMoment) => time(site(isoMoment)),
    y: (mm) => level(mm),
    xOfDay: (isoDate) => time(parseISO(isoDate)),
    left: LEFT,
    right,
    today: time(today),
    levels: levelsOf(level.ticks(5)).map((mm) => ({ mm, y: level(mm) })),
    times: time.ticks(Math.max(2, Math.floor((right - LEFT) / 76))).map((at) => ({ x: time(at), label: nameOfTime(at) })),
    nipLine,
    leakLine,
    bottom,
    height: bottom + 30,
  }
}

/** How much of the future is shown, in ms. */
function aheadOf(forecast: PlotInput['state']['forecast'], today: Date, past: number): number {
  if (forecast === null) return past * 0.25
  const until = (day: string | null) => (day === null ? 0 : parseISO(day).getTime() - today.getTime() + past * 0.04)
  const most = Math.max(past * 0.6, LEAST_DAYS_AHEAD * DAY)
  const fan = Math.min(until(forecast.late ?? forecast.middle ?? forecast.early), most)
  return Math.max(past * 0.25, fan, Math.min(until(forecast.stopOn), Math.max(past, most)))
}

/** Zero is on every axis of millimetres. */
function levelsOf(ticks: readonly number[]): number[] {
  return ticks.includes(0) ? [...ticks] : [0, ...ticks]
}

function nameOfTime(at: Date): string {
  if (at.getDate() !== 1) return format(at, 'd MMM')
  return format(at, at.getMonth() === 0 ? 'yyyy' : 'MMM')
}

/** The past as a stair: a follower moves only when somebody turns a nut. Solid where read, apart where worked out. */
export function stairOf(points: readonly ReservePoint[], frame: PlotFrame): Course[] {
  const courses: { path: string; isInferred: boolean }[] = []
  const ordered = drawable(points, frame)
  ordered.forEach(({ at, reserve, isInferred }, index) => {
    if (reserve === null) return
    const next = ordered[index + 1]
    const until = next ? frame.x(next.at) : Math.max(frame.today, frame.x(at))
    const before = ordered[index - 1]?.reserve ?? null
    const step = `V${px(frame.y(reserve))}H${px(until)}`
    const last = courses.at(-1)
    if (last && before !== null && last.isInferred === isInferred) last.path += step
    else courses.push({ path: `M${px(frame.x(at))} ${px(frame.y(before ?? reserve))}${step}`, isInferred })
  })
  return courses
}

/** A nip and the reading right after it are one step on this scale: the last word of each moment counts. */
function drawable(points: readonly ReservePoint[], frame: PlotFrame): ReservePoint[] {
  const ordered = points.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at))
  return ordered.filter(({ at }, index) => {
    const next = ordered[index + 1]
    return next === undefined || frame.x(next.at) - frame.x(at) >= ONE_MOMENT
  })
}

const px = (value: number) => Number(value.toFixed(1))

export function bandsOf({ lives, now, timeZone }: PlotInput, frame: PlotFrame): LifeBand[] {
  return lives.map(({ from, to }, index) => {
    const left = from === null ? frame.left : Math.max(frame.x(from), frame.left)
    const right = to === null ? frame.right : Math.min(frame.x(to), frame.right)
    const until = to === null ? atSite(now, timeZone) : atSite(new Date(to), timeZone)
    const length = from === null ? ['began before', 'the records'] : [lengthOf(atSite(new Date(from), timeZone), until)]
    const wanted = [`life ${index + 1}`, ...length, ...(to === null && from !== null ? ['so far'] : [])]
    return { left, right, isOdd: index % 2 === 1, lines: fitting(wanted, right - left, index + 1) }
  })
}

/** A band too narrow for its words keeps its number; one too narrow for that keeps nothing. */
function fitting(lines: readonly string[], width: number, number: number): string[] {
  const fits = (line: string) => line.length * PX_PER_LETTER + 10 <= width
  if (lines.every(fits)) return [...lines]
  return [`life ${number}`, String(number)].filter(fits).slice(0, 1)
}

/** From day to day: an hour of summer time does not take a month off. */
function lengthOf(from: Date, to: Date): string {
  const [first, last] = [startOfDay(from), startOfDay(to)]
  const months = differenceInMonths(last, first)
  const [count, word] = months >= 1 ? [months, 'month'] : [Math.max(differenceInDays(last, first), 0), 'day']
  return `${count} ${word}${count === 1 ? '' : 's'}`
}
