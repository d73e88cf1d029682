import type { ReserveForecast } from '@glandkeeper/contract/reserve'
import { formatChance } from '@glandkeeper/units/format'
import { format } from 'date-fns'
import { atSite, formatDay } from '../../platform/site-time.ts'
import { howSure, usedUpWhen } from './index.ts'
import type { PlotFrame, PlotInput } from './reserve-geometry.ts'

interface Fan {
  /** Dashed: as likely used up before as after. */
  readonly middle: string
  /** Areas between the courses that are used up early and late: four times in five, nineteen times in twenty. */
  readonly likely: string
  readonly widest: string
}

type Point = readonly [x: number, y: number]

interface LeftOutMark {
  readonly x: number
  readonly y: number
  readonly why: string
  /** Null where the word would lie over that of the mark before. */
  readonly label: { readonly x: number; readonly anchor: 'start' | 'end' } | null
}

interface StopMark {
  readonly left: number
  readonly width: number
  readonly label: string
  readonly labelX: number
  readonly anchor: 'middle' | 'end'
}

const YEARS_AHEAD = 20
const STOP_WIDTH = 4
const PX_PER_LETTER = 6.2

/** From the level last counted to zero. What ends beyond the edge is cut off on its own line; null where nothing falls. */
export function fanOf({ state: { forecast, reserve } }: PlotInput, frame: PlotFrame): Fan | null {
  if (forecast === null || forecast.level <= 0 || (reserve !== null && reserve <= 0)) return null
  const start: Point = [frame.x(forecast.countedFrom), frame.y(forecast.level)]
  const end = (date: string | null): Point => cutAtEdge(start, [endX(date, forecast, frame), frame.y(0)], frame.right)
  return {
    middle: `M${pair(start)}L${pair(end(forecast.middle))}`,
    likely: areaOf(start, end(forecast.early), end(forecast.late), frame),
    widest: areaOf(start, end(forecast.earliest), end(forecast.latest), frame),
  }
}

/** A day beyond twenty years is drawn as if it were twenty years: the steepest it can be, and far out of the plot. */
function endX(date: string | null, { countedFrom }: ReserveForecast, frame: PlotFrame): number {
  const beyond = () => {
    const from = new Date(countedFrom)
    return format(from.setFullYear(from.getFullYear() + YEARS_AHEAD), 'yyyy-MM-dd')
  }
  return Math.max(frame.xOfDay(date ?? beyond()), frame.x(countedFrom))
}

function cutAtEdge([x0, y0]: Point, [x1, y1]: Point, edge: number): Point {
  if (x1 <= edge || x1 <= x0) return [x1, y1]
  const share = Math.max(edge - x0, 0) / (x1 - x0)
  return [x0 + (x1 - x0) * share, y0 + (y1 - y0) * share]
}

function areaOf(start: Point, early: Point, late: Point, frame: PlotFrame): string {
  const zero = frame.y(0)
  // The late course leaves the plot above zero while the early one reaches it: the corner belongs to the area.
  const corner: Point[] = late[1] < zero && early[1] >= zero ? [[frame.right, zero]] : []
  return `M${[start, late, ...corner, early].map(pair).join('L')}Z`
}

const pair = ([x, y]: Point) => `${x.toFixed(1)} ${y.toFixed(1)}`

/** @example forecastInWords(forecast, now, 'Europe/London') // → 'used up 3 Mar to 20 Aug 2027, four times in five' */
export function forecastInWords({ early, late }: ReserveForecast, now: Date, timeZone: string): string {
  const span = { early, late, today: format(atSite(now, timeZone), 'yyyy-MM-dd') }
  return `${early === null ? 'lasts' : 'used up'} ${usedUpWhen({ ...span, grain: 'day' })}, ${howSure(span)}`
}

/** The next chance to repack, or half a year ahead where none is planned, and how likely the reserve does not last until then. */
export function stopMark({ state: { forecast }, plannedStopOn }: PlotInput, frame: PlotFrame): StopMark | null {
  if (forecast === null) return null
  const x = frame.xOfDay(forecast.stopOn)
  if (x < frame.today || x > frame.right) return null
  const [day, chance] = [formatDay(forecast.stopOn), formatChance(forecast.chanceBeforeStop)]
  const isPlanned = plannedStopOn === forecast.stopOn
  const label = isPlanned ? `stop ${day}, ${chance} before it` : `no stop planned, ${chance} before ${day}`
  const half = (label.length * PX_PER_LETTER) / 2
  const isAtEdge = x + half > frame.right
  return {
    left: x - STOP_WIDTH / 2,
    width: STOP_WIDTH,
    label,
    labelX: isAtEdge ? frame.right : x,
    anchor: isAtEdge ? 'end' : 'middle',
  }
}

/** Readings the forecast does not use: they stay in the stair, and are marked with the reason. */
export function leftOutMarks({ state: { forecast } }: PlotInput, frame: PlotFrame): LeftOutMark[] {
  let takenUntil = -Infinity
  return (forecast?.leftOut ?? [])
    .toSorted((one, other) => Date.parse(one.at) - Date.parse(other.at))
    .map(({ at, reserve, why }) => {
      const x = frame.x(at)
      const width = why.length * PX_PER_LETTER
      const anchor = x + 9 + width > frame.right ? 'end' : 'start'
      const from = anchor === 'start' ? x + 9 : x - 9 - width
      const isFree = from >= takenUntil && from >= frame.left
      if (isFree) takenUntil = from + width
      return { x, y: frame.y(reserve), why, label: isFree ? { x: anchor === 'start' ? x + 9 : x - 9, anchor } : null }
    })
}
