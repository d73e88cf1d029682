import type { PlanBlock, RoundPlan } from '@glandkeeper/contract/round-plans'
import { setUpOf } from './consequence.ts'

/** The part of a plan that is drawn. */
export interface ChartView {
  readonly plan: RoundPlan
  /** Null shows all crews together. */
  readonly crewId: string | null
  readonly firstWeek: number
  readonly weeks: number
  readonly width: number
}

export interface ChartBar {
  readonly block: PlanBlock
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly wash: string
}

export interface ChartWeek {
  readonly week: number
  readonly x: number
  readonly middle: number
  readonly load: number
  readonly hours: number
  /** Top of what is stacked there. */
  readonly top: number
}

export interface LoadChart {
  readonly height: number
  readonly left: number
  readonly right: number
  readonly base: number
  readonly bars: readonly ChartBar[]
  readonly weeks: readonly ChartWeek[]
  /** Crew hours, as the d of a path. */
  readonly capacity: string
  readonly lines: readonly { readonly hours: number; readonly y: number }[]
  readonly step: number
}

const LEFT = 40
const RIGHT = 8
const TOP = 26
const DRAWN = 330
const BELOW = 46
/** Washes as the areas stack, in walking order. */
const WASHES = ['wash-steel', 'sheet', 'wash-pack', 'wash-band', 'wash-medium'] as const

/** Where everything of the chart of hours goes: areas stacked in walking order, crew hours as a stair. */
export function loadChart({ plan, crewId, firstWeek, weeks, width }: ChartView): LoadChart {
  const shown = plan.blocks.filter(
    ({ week, crewId: of }) => week >= firstWeek && week < firstWeek + weeks && (crewId === null || of === crewId),
  )
  const place = new Map(plan.areas.map(({ areaCode }, index) => [areaCode, index]))
  const stacked = shown.toSorted(
    (one, other) => one.week - other.week || (place.get(one.areaCode) ?? 0) - (place.get(other.areaCode) ?? 0),
  )
  const hoursIn = (week: number) =>
    plan.crews.filter((crew) => crewId === null || crew.crewId === crewId).reduce((sum, crew) => sum + (crew.hours[week] ?? 0), 0)
  const columnHours = Array.from({ length: weeks }, (_, index) => hoursIn(firstWeek + index))
  const loads = loadsByWeek(plan, stacked)
  // A tenth over what is highest, so that a block that is lifted has room.
  const most = Math.max(1, ...loads.values(), ...columnHours) * 1.1
  const step = (width - LEFT - RIGHT) / weeks
  const barWidth = Math.max(8, step * 0.8)
  const y = (hours: number) => TOP + DRAWN - (hours / most) * DRAWN
  const x = (week: number) => LEFT + (week - firstWeek) * step + (step - barWidth) / 2
  const tops = new Map<number, number>()
  const bars = stacked.map((block): ChartBar => {
    const from = tops.get(block.week) ?? 0
    const to = from + block.hours + setUpOf(plan, block.areaCode)
    tops.set(block.week, to)
    return {
      block,
      x: x(block.week),
      y: y(to),
      width: barWidth,
      height: y(from) - y(to),
      wash: WASHES[(place.get(block.areaCode) ?? 0) % WASHES.length] ?? 'sheet',
    }
  })
  const columns = Array.from({ length: weeks }, (_, index): ChartWeek => {
    const week = firstWeek + index
    const load = loads.get(week) ?? 0
    return {
      week,
      x: LEFT + index * step,
      middle: LEFT + (index + 0.5) * step,
      load,
      hours: columnHours[index] ?? 0,
      top: y(load),
    }
  })
  return {
    height: TOP + DRAWN + BELOW,
    left: LEFT,
    right: width - RIGHT,
    base: TOP + DRAWN,
    bars,
    weeks: columns,
    capacity: columns.map(({ x: at, hours }, index) => `${index === 0 ? 'M' : 'L'}${at} ${y(hours)}H${at + step}`).join(''),
    lines: gridOf(most).map((hours) => ({ hours, y: y(hours) })),
    step,
  }
}

/** Hours of all blocks of a week, with the set-up of their areas. */
function loadsByWeek(plan: RoundPlan, blocks: readonly PlanBlock[]): ReadonlyMap<number, number> {
  const loads = new Map<number, number>()
  for (const { week, hours, areaCode } of blocks) loads.set(week, (loads.get(week) ?? 0) + hours + setUpOf(plan, areaCode))
  return loads
}

const STEPS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000]

/** Four to eight even lines, zero among them. */
function gridOf(most: number): number[] {
  const step = STEPS.find((candidate) => most / candidate <= 7) ?? most
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => index * step)
}

/** The week under a place of the chart; the nearest at its ends. */
export function weekAt({ left, step, weeks }: LoadChart, x: number): number {
  const index = Math.min(weeks.length - 1, Math.max(0, Math.floor((x - left) / step)))
  return weeks[index]?.week ?? 0
}
