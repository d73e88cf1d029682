import { type Bar, type Celsius, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { acidityReasons, type Fluid } from './fluid-reasons.ts'
import type { FamilyFigures, FamilyForm } from './families.ts'
import type { Caution } from './cautions.ts'
import { inRange, type Reason, temperatureLimits } from './reasons.ts'

export type Verdict = 'suitable' | 'not known' | 'outside its limits'
export type StemMovement = 'rising' | 'turning' | 'rising and turning' | 'quarter turn'

export interface JudgedFamily {
  readonly form: FamilyForm
  readonly isOldStock: boolean
  readonly figures: FamilyFigures
  readonly cautions: readonly Caution[]
}

/** What a valve asks of its packing; null is not known. */
export interface Service extends Fluid {
  readonly temperature: Celsius | null
  /** Above atmosphere. */
  readonly pressure: Bar | null
  readonly stemMovement: StemMovement | null
}

export interface Judgement {
  readonly verdict: Verdict
  /** The graver first. */
  readonly reasons: readonly Reason[]
}

const gravest: readonly Reason['standing'][] = ['outside', 'not known', 'near', 'within', 'note']

/**
 * Does this kind of packing stand what goes through the valve?
 *
 *     temperature, pH     |value - middle| / half of the range     nought in the middle, 1 at an end
 *     pressure            value / limit, nought for vacuum
 *
 * Outside when any is more than 1; near from 0.9 on. What is not known is said so and never passes for suitable.
 * It knows limits one by one: not that many packings stand less pressure when hot, nor grit, speed or shock.
 *
 * @source SRC-600 to SRC-602 limits, SRC-610 near, SRC-611 fluids (docs/sources.md)
 * @returns the verdict with every reason, or the figure of the family that contradicts itself
 * @example judgeFamily({ family: { form: 'braided', cautions: [], figures: { lowestTemperature: -200, highestTemperature: 260, highestSteamTemperature: 230, highestPressure: 100, lowestPh: 0, highestPh: 14 } }, temperature: celsius(400), pressure: bar(40), phase: 'steam', ph: null }).verdict // → 'outside its limits'
 */
export function judgeFamily(input: Service & { readonly family: JudgedFamily }): Outcome<Judgement> {
  const { family, temperature, pressure } = input
  const { figures } = family
  const fault = notFinite(input) ?? contradictionIn(figures)
  if (fault) return fault
  const [lowest, highest] = temperatureLimits(figures, input.phase)
  const reasons: Reason[] = [
    inRange({ subject: 'temperature', value: temperature, lowest, highest, unit: '°C' }),
    pressureReason(pressure, figures.highestPressure),
    ...acidityReasons(input),
    ...stemReasons(input),
  ]
  const faulty = reasons.find(({ used }) => used !== null && !Number.isFinite(used))
  if (faulty) return refuse('number/out-of-range', faulty.code.split('/')[0] ?? '', `the figures are too large: ${faulty.detail}`)
  const sorted = reasons.toSorted((a, b) => gravest.indexOf(a.standing) - gravest.indexOf(b.standing))
  return { ok: true, verdict: verdictOf(reasons), reasons: sorted }
}

function verdictOf(reasons: readonly Reason[]): Verdict {
  if (reasons.some(({ standing }) => standing === 'outside')) return 'outside its limits'
  return reasons.some(({ standing }) => standing === 'not known') ? 'not known' : 'suitable'
}

function pressureReason(pressure: Bar | null, limit: Bar): Reason {
  if (pressure === null)
    return { code: 'pressure/not-known', standing: 'not known', used: null, detail: 'the pressure of the valve is not recorded' }
  return inRange({ subject: 'pressure', value: pressure, lowest: null, highest: limit, unit: 'bar' })
}

function stemReasons({ family, stemMovement }: Pick<Service, 'stemMovement'> & { readonly family: JudgedFamily }): Reason[] {
  const notes: Reason[] = []
  const note = (code: Reason['code'], detail: string) => notes.push({ code, standing: 'note', used: null, detail })
  if (family.isOldStock) note('family/old-stock', 'met in old boxes; not put in today')
  const turns = stemMovement === 'turning' || stemMovement === 'rising and turning' || stemMovement === 'quarter turn'
  if (turns && family.cautions.includes('wire scores stems')) note('stem/turns-in-wire', 'the stem turns, and wire can score it')
  if (family.form === 'die-formed' && stemMovement !== null && stemMovement.startsWith('rising'))
    note('stem/wiped-by-end-rings', 'the stem rises: braided end rings must wipe it and keep the pressed rings in')
  return notes
}

/** Not known is null; NaN and the infinities are a fault of whoever calls. */
function notFinite({ temperature, pressure, ph }: Service): ReturnType<typeof refuse> | null {
  const figures = { temperature, pressure, ph: ph === null ? null : ph.lowest + ph.highest }
  for (const [field, value] of Object.entries(figures)) {
    if (value !== null && !Number.isFinite(value))
      return refuse('number/out-of-range', field, `the ${field} must be a figure, not ${value}`)
  }
  return null
}

/** Limits that leave no room between them are a slip of the pen and judge nothing. */
function contradictionIn(figures: FamilyFigures): ReturnType<typeof refuse> | null {
  const { lowestTemperature, highestTemperature, highestSteamTemperature, highestPressure, lowestPh, highestPh } = figures
  const notAbove = (field: keyof FamilyFigures, high: number, low: number) =>
    high > low && high < Infinity && low > -Infinity
      ? null
      : refuse('family/limits-crossed', field, `${high} leaves no room above ${low}`)
  return (
    notAbove('highestTemperature', highestTemperature, lowestTemperature) ??
    notAbove('highestSteamTemperature', highestSteamTemperature, lowestTemperature) ??
    notAbove('highestPressure', highestPressure, 0) ??
    notAbove('highestPh', highestPh, lowestPh)
  )
}

export interface RankedFamily extends Judgement {
  readonly name: string
}

const verdicts: readonly Verdict[] = ['suitable', 'not known', 'outside its limits']

/**
 * Every family judged for one valve, the best first: by verdict; then those not near a limit; what is put in today
 * before old stock; the longer usual life; the lower friction; the name.
 * It knows no price and no stock, and leaves the choice to whoever knows the service.
 *
 * @source SRC-610 the order (docs/sources.md)
 * @example rankFamilies({ families: [], temperature: null, pressure: null, phase: 'liquid', ph: null, isOxidising: null, stemMovement: null }) // → { ok: true, ranking: [] }
 */
export function rankFamilies(
  input: Service & { readonly families: readonly (JudgedFamily & { readonly name: string })[] },
): Outcome<{ readonly ranking: readonly RankedFamily[] }> {
  const judged: { family: JudgedFamily & { readonly name: string }; judgement: Judgement }[] = []
  for (const family of input.families) {
    const judgement = judgeFamily({ ...input, family })
    if (!judgement.ok) return refuse(judgement.problem.code, 'families', `${family.name}: ${judgement.problem.detail}`)
    judged.push({ family, judgement })
  }
  const isNear = ({ reasons }: Judgement) => Number(reasons.some(({ standing }) => standing === 'near'))
  const ranking = judged.toSorted(
    (a, b) =>
      verdicts.indexOf(a.judgement.verdict) - verdicts.indexOf(b.judgement.verdict) ||
      Number(a.family.isOldStock) - Number(b.family.isOldStock) ||
      isNear(a.judgement) - isNear(b.judgement) ||
      b.family.figures.usualLife - a.family.figures.usualLife ||
      a.family.figures.friction - b.family.figures.friction ||
      (a.family.name < b.family.name ? -1 : 1),
  )
  return {
    ok: true,
    ranking: ranking.map(({ family, judgement: { verdict, reasons } }) => ({ name: family.name, verdict, reasons })),
  }
}

/** How much of its limits a family has used where it has used most; null when nothing could be compared. */
export function mostUsed({ reasons }: Judgement): Ratio | null {
  const shares = reasons.flatMap(({ used }) => (used === null ? [] : [used]))
  return shares.length === 0 ? null : ratio(Math.max(...shares))
}
