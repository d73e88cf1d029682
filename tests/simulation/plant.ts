import { type Random, seededRandom } from '@glandkeeper/fixtures/random'
import type { FitLife } from '@glandkeeper/engines/wear/fit-lives'
import type { LifeRecord, ReserveReading } from '@glandkeeper/engines/wear/life'
import { addDays, days, instant, mm } from '@glandkeeper/units/quantity'

/**
 * How glands of an invented plant wear: its own account, not the forecast's. Reserve falls in whole steps of half a turn,
 * never rises, and chance comes as jumps that only go down.
 */
export interface Scenario {
  readonly name: string
  readonly groups: number
  /** Standard deviations of ln rate: between groups, and between lives of one group. */
  readonly betweenGroups: number
  readonly withinGroup: number
  /** Share of wear that comes in jumps, and their mean size in mm. */
  readonly jumpShare: number
  readonly jumpMean: number
  readonly grossErrors: number
  /** Share of lives whose rate doubles once, anywhere between full and empty. */
  readonly doubling: number
  /** Share of lives that are filed under another group than they belong to. */
  readonly wrongGroup: number
  readonly unknownRepack: number
  /** Lives for the fit, and the longest that one of them was watched, in years. */
  readonly fitLives: number
  readonly watchedYears: number
}

export const base: Scenario = {
  name: 'base',
  groups: 12,
  betweenGroups: 0.5,
  withinGroup: 0.5,
  jumpShare: 0.4,
  jumpMean: 0.21,
  grossErrors: 0,
  doubling: 0,
  wrongGroup: 0,
  unknownRepack: 0.15,
  fitLives: 1200,
  watchedYears: 8,
}

export const scenarios: readonly Scenario[] = [
  base,
  { ...base, name: 'young plant', fitLives: 150, watchedYears: 2 },
  { ...base, name: '3 % gross errors', grossErrors: 0.03 },
  { ...base, name: 'lives that differ much', withinGroup: 0.8 },
  { ...base, name: '30 % in the wrong group', wrongGroup: 0.3 },
  { ...base, name: 'wear in large jumps', jumpShare: 0.6, jumpMean: 0.5 },
]

/** Beyond what the model knows: the intervals come out a little too narrow. The benchmark says by how much. */
export const tooHard: readonly Scenario[] = [{ ...base, name: 'rate doubles in a quarter of lives', doubling: 0.25 }]

/** A life with its end, which no forecast may see. */
export interface TrueLife {
  readonly group: string
  /** Every reading until it ran out. */
  readonly record: LifeRecord
  /** Days from `begin` to the first day without reserve; Infinity beyond thirty years. */
  readonly runsOutAfter: number
}

const YEAR = 365.25
const TICK = 5
const LONGEST = 30 * YEAR
/** Half a turn of M10, M12, M16 and M20. */
const STEPS = [0.75, 0.875, 1, 1.25]
const INTERVALS = [45, 60, 90, 120, 180]
const READING_ERROR = 0.3
export const begin = instant(Date.UTC(2020, 0, 1))

export function livesOf(scenario: Scenario, seed: number, count: number): TrueLife[] {
  // The groups belong to the plant, not to the draw: lives to learn from and lives to judge by share them.
  const plant = seededRandom(1, `groups of ${scenario.groups}`)
  const groupRates = Array.from({ length: scenario.groups }, () => plant.normal(0, scenario.betweenGroups))
  const random = seededRandom(seed, scenario.name)
  return Array.from({ length: count }, (_, index) => lifeOf(scenario, groupRates, random.branch(String(index))))
}

function lifeOf(scenario: Scenario, groupRates: readonly number[], random: Random): TrueLife {
  const group = random.integer(0, groupRates.length - 1)
  const rate = (3 / YEAR) * Math.exp(groupRates[group]! + random.normal(0, scenario.withinGroup))
  const course = courseOf(scenario, rate, random)
  const filed = random.chance(scenario.wrongGroup) ? random.integer(0, groupRates.length - 1) : group
  const isUnknown = random.chance(scenario.unknownRepack)
  const knownFrom = isUnknown ? random.between(200, 900) : 0
  const interval = random.choice(INTERVALS)
  const readings: ReserveReading[] = []
  for (let age = random.between(0, 30); age < course.runsOutAfter && age < LONGEST; age += interval * random.between(0.7, 1.3)) {
    const off = random.chance(scenario.grossErrors) ? random.between(3, 8) * random.choice([-1, 1]) : 0
    const reserve = mm(course.reserveAt(age) + random.normal(0, READING_ERROR) + off)
    if (age >= knownFrom) readings.push({ at: addDays(begin, days(age)), reserve })
  }
  const record = { readings, nips: [], repackedAt: isUnknown ? null : begin, step: mm(course.step) }
  return { group: `G${filed}`, record, runsOutAfter: course.runsOutAfter }
}

/** Wear asked for, tick by tick, and the follower that sinks after it in whole steps. */
function courseOf(scenario: Scenario, rate: number, random: Random) {
  const step = random.choice(STEPS)
  const start = random.between(9, 20)
  const phase = random.uniform()
  const bedInTime = 50 * random.lognormal(0.3)
  const bedInFall = random.lognormal(0.4)
  const doublesAt = random.chance(scenario.doubling) ? start * random.uniform() : Infinity
  const reserves: number[] = []
  let worn = 0
  let share = 0
  for (let age = 0; age < LONGEST; age += TICK) {
    const reserve = start - step * Math.floor(worn / step + phase)
    reserves.push(reserve)
    if (reserve <= 0) break
    const nextShare = 1 - Math.exp(-(age + TICK) / bedInTime)
    const meanWear = rate * (TICK + 120 * (nextShare - share)) * (worn >= doublesAt ? 2 : 1)
    worn += meanWear * (1 - scenario.jumpShare) + bedInFall * (nextShare - share)
    const expectedJumps = (meanWear * scenario.jumpShare) / scenario.jumpMean
    for (let last = random.exponential(1); last < expectedJumps; last += random.exponential(1))
      worn += random.exponential(scenario.jumpMean)
    share = nextShare
  }
  const hasRunOut = reserves.at(-1)! <= 0
  const runsOutAfter = hasRunOut ? (reserves.length - 1) * TICK : Infinity
  return { step, runsOutAfter, reserveAt: (age: number) => reserves[Math.min(Math.floor(age / TICK), reserves.length - 1)]! }
}

/** The lives as a plant's records have them on one day: some ended, most not. */
export function watchedLives(scenario: Scenario, seed: number, count = scenario.fitLives): FitLife[] {
  const random = seededRandom(seed, `${scenario.name}, watched until`)
  return livesOf(scenario, seed, count).map(({ group, record }, index) => {
    const today = addDays(begin, days(random.between(0.2, scenario.watchedYears) * YEAR))
    const readings = record.readings.filter(({ at }) => at <= today)
    return { group, valve: String(index), life: { ...record, readings } }
  })
}
