import type { OkIn } from '@glandkeeper/contract/endpoint'
import { type comparePackings as endpoint, HeatBand } from '@glandkeeper/contract/packing-lives'
import { comparePackings, type GroupOfLives, type LifeLaw } from '@glandkeeper/engines/packing/lives/compare'
import { type LifeOfPacking, packingLives, type RecordedLife } from '@glandkeeper/engines/packing/lives/lives'
import { thinned } from '@glandkeeper/engines/packing/lives/curve'
import { comparisonSentence } from '@glandkeeper/engines/packing/lives/sentence'
import { groupedBy } from '../../platform/grouped-by.ts'
import { rounded } from './rate-table.ts'

type Answer = OkIn<typeof endpoint>
/** What a screen shows apart. */
const STEPS_SHOWN = 60
/** What is said of the packings of one service in one band of heat. */
export type ComparedLives = Pick<Answer, 'packings' | 'leftOut' | 'notSeenSince' | 'logRank' | 'sentence'>
type Heat = ReturnType<typeof HeatBand.parse>

const MOST_VALVES = 50
/** Limits beyond say as much as none. */
const FARTHEST = 1e9
const inWords: Readonly<Record<Heat, string>> = {
  any: '',
  'below 100 °C': ' below 100 °C',
  '100 to 250 °C': ' at 100 to 250 °C',
  'above 250 °C': ' above 250 °C',
}

/** @param service null for all of them */
export function keyOfLives(service: string | null, heat: Heat): string {
  return JSON.stringify([service, heat])
}

/** Every service and all together, in every band of heat in which a packing was; each as a text that is read when asked for. */
export function* livesCompared(recorded: readonly RecordedLife[]): Generator<readonly [key: string, text: string]> {
  const services = [[null, recorded] as const, ...groupedBy(recorded, ({ service }) => service)]
  for (const [service, own] of services) {
    for (const heat of HeatBand.options) {
      const there = heat === 'any' ? own : own.filter(({ temperature }) => temperature !== null && heatOf(temperature) === heat)
      if (there.length > 0) yield [keyOfLives(service, heat), JSON.stringify(comparedOf(there, wordsFor(service, heat)))]
    }
  }
}

/** Where packings were compared, as it stands in the sentence. */
export function wordsFor(service: string | null, heat: Heat): string {
  return `${service ?? 'all services'}${inWords[heat]}`
}

function heatOf(temperature: number): Heat {
  if (temperature < 100) return 'below 100 °C'
  return temperature > 250 ? 'above 250 °C' : '100 to 250 °C'
}

function comparedOf(recorded: readonly RecordedLife[], service: string): ComparedLives {
  const { lives, leftOut } = packingLives(recorded)
  const byFamily = [...groupedBy(lives, ({ family }) => family)].toSorted(
    ([name, one], [otherName, other]) => other.length - one.length || (name < otherName ? -1 : 1),
  )
  const groups = byFamily.map(([name, own]) => ({ name, lives: own }))
  const found = comparePackings({ groups, confidence: 0.95, weibull: true })
  const result = found.ok ? found : { confidence: 0.95, groups: [], difference: null }
  const known = groupedBy(recorded, ({ family }) => family)
  return {
    packings: result.groups.map((group, place) => {
      const stillIn = known.get(group.name)?.filter((life) => life.to === null && hasLength(life)).length ?? 0
      return presentGroup(group, stillIn, groups[place]?.lives ?? [])
    }),
    leftOut: leftOut.beginningNotKnown,
    notSeenSince: leftOut.withoutLength,
    logRank: result.difference && {
      chiSquared: rounded(result.difference.chiSquared, 4),
      degreesOfFreedom: result.difference.degreesOfFreedom,
      p: result.difference.p,
    },
    sentence: comparisonSentence(result, { service }),
  }
}

/** As the engine leaves out lives of which nobody knows how long they held. */
function hasLength({ from, to, lastSeen }: RecordedLife): boolean {
  return from !== null && (to ?? lastSeen) > from
}

function presentGroup(group: GroupOfLives, stillIn: number, lives: readonly LifeOfPacking[]): ComparedLives['packings'][number] {
  return {
    family: group.name,
    lives: group.lives,
    wornOut: group.ended,
    renewedEarly: group.censored - stillIn,
    stillIn,
    isTooFew: group.isTooFew,
    steps: thinned(group.steps, STEPS_SHOWN).map(({ time, survival, lower, upper }) => ({
      months: rounded(time, 2),
      survival: rounded(survival, 4),
      lower: lower === null ? null : rounded(lower, 4),
      upper: upper === null ? null : rounded(upper, 4),
    })),
    atRisk: group.atRisk.map(({ time, lives: watched }) => ({ months: time, lives: watched })),
    median: inMonths(group.median),
    medianLower: inMonths(group.medianLower),
    medianUpper: inMonths(group.medianUpper),
    ...presentLaw(group),
    valves: valvesOf(lives),
  }
}

function inMonths(value: number | null): number | null {
  return value === null ? null : rounded(value, 2)
}

function presentLaw({ law, whyNoLaw }: GroupOfLives) {
  if (law === null) return { weibull: null, weibullMissing: whyNoLaw }
  if (Object.values(law).some((figure: number) => figure > FARTHEST))
    return { weibull: null, weibullMissing: 'its limits are too wide to say anything' }
  return { weibull: { scale: limited(law, 'scale'), shape: limited(law, 'shape') }, weibullMissing: null }
}

function limited(law: LifeLaw, of: 'scale' | 'shape') {
  return { value: rounded(law[of], 4), lower: rounded(law[`${of}Lower`], 4), upper: rounded(law[`${of}Upper`], 4) }
}

/** Where it wore out soonest first: those to go and look at. */
function valvesOf(lives: readonly LifeOfPacking[]): string[] {
  const inOrder = lives.toSorted(
    (one, other) => Number(other.ended) - Number(one.ended) || one.time - other.time || (one.valveId < other.valveId ? -1 : 1),
  )
  return [...new Set(inOrder.map(({ valveId }) => valveId))].slice(0, MOST_VALVES)
}
