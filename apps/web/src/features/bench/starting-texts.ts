import type { Calculator } from '@glandkeeper/bench/calculator'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { z } from 'zod'
import type { Texts } from './typed-inputs.ts'

interface Start {
  readonly texts: Texts
  /** The inputs that a valve of the register filled in. */
  readonly fromValve: ReadonlySet<string>
}

/** A valve of the register, with its packing's figures as the site has them, at the moment of asking. */
export interface KnownValve {
  readonly history: ValveHistory
  readonly family: SiteFamily | null
  readonly now: Date
}

/**
 * What stands in the boxes before anybody types. Of a valve: its own figures, and nothing of the example; what the
 * register does not know stays empty, so that no made-up figure passes for the valve's.
 */
export function startingTexts(calculator: Calculator, valve: KnownValve | null): Start {
  const names = Object.keys(calculator.input.shape)
  if (valve === null) {
    const example = calculator.input.parse(calculator.example)
    return { texts: Object.fromEntries(names.map((name) => [name, textOf(example[name])])), fromValve: new Set() }
  }
  const facts = factsOf(valve)
  return {
    texts: Object.fromEntries(names.map((name) => [name, textOf(name in facts ? facts[name] : defaultOf(calculator, name))])),
    fromValve: new Set(names.filter((name) => (facts[name] ?? null) !== null)),
  }
}

const MILLISECONDS_PER_DAY = 86_400_000

/** The register's figures of one valve, by the names that calculators use for them. Null is not known. */
function factsOf({ history: { valve, state, lives, timeline }, family, now }: KnownValve): Readonly<Record<string, unknown>> {
  const life = lives.find((candidate) => candidate.to === null)
  const { boxBore, stemDiameter, noseLength } = valve.gland
  const gaps = [state.gapLeft, state.gapRight].filter((gap) => gap !== null)
  const figures = family?.figures
  return {
    ...valve.gland,
    section: boxBore === null || stemDiameter === null ? null : rounded((boxBore - stemDiameter) / 2),
    temperature: valve.temperature,
    pressure: valve.pressure,
    stemMovement: valve.stemMovement,
    motion: valve.stemMovement === 'quarter turn' ? 'turning' : valve.stemMovement,
    phase: valve.phase,
    gapLeft: state.gapLeft,
    gapRight: state.gapRight,
    reserve: state.reserve,
    followerEntry: noseLength === null || gaps.length === 0 ? null : rounded(noseLength - Math.min(...gaps)),
    rings: life?.rings ?? null,
    ageOfPacking:
      state.packedOn === null ? null : Math.floor((now.getTime() - Date.parse(state.packedOn)) / MILLISECONDS_PER_DAY),
    topUpRings: timeline.filter(({ event }) => event.kind === 'ring.added' && event.takenAt >= (state.packedOn ?? '')).length,
    form: family?.form ?? null,
    dieFormed: family === null ? null : family.form === 'die-formed',
    leastStress: figures?.stressFloor.value ?? null,
    consolidation: figures?.consolidation.value ?? null,
    friction: figures?.friction.value ?? null,
    lateralRatio: figures?.lateralRatio.value ?? null,
    usualLife: figures?.usualLife.value ?? null,
  }
}

/** A default of the calculator itself, which is no figure of a valve. */
function defaultOf(calculator: Calculator, name: string): unknown {
  const shape: z.core.$ZodShape = calculator.input.shape
  const field = shape[name]
  return field instanceof z.ZodDefault ? field.def.defaultValue : undefined
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000
}

function textOf(value: unknown): string {
  if (value === undefined || value === null) return ''
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) return value.join('; ')
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}
