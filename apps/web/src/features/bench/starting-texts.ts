import type { Calculator } from '@glandkeeper/bench/calculator'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import type { Texts } from './typed-inputs.ts'

interface Start {
  readonly texts: Texts
  /** The inputs that a valve of the register filled in. */
  readonly fromValve: ReadonlySet<string>
}

/** What stands in the boxes before anybody types: the valve's own figures where there is one, else the example's. */
export function startingTexts(calculator: Calculator, valve: ValveHistory | null): Start {
  const facts = valve === null ? {} : factsOf(valve)
  const names = Object.keys(calculator.input.shape)
  // Parsed, so that the defaults stand in their boxes too and can be seen and changed.
  const example = calculator.input.parse(calculator.example)
  const known = names.filter((name) => (facts[name] ?? null) !== null)
  return {
    texts: Object.fromEntries(names.map((name) => [name, textOf(facts[name] ?? example[name])])),
    fromValve: new Set(known),
  }
}

/** The register's figures of one valve, by the names that calculators use for them. */
function factsOf({ valve, state, lives }: ValveHistory): Readonly<Record<string, unknown>> {
  const life = lives.find((candidate) => candidate.to === null)
  return {
    ...valve.gland,
    temperature: valve.temperature,
    pressure: valve.pressure,
    stemMovement: valve.stemMovement,
    phase: valve.phase,
    gapLeft: state.gapLeft,
    gapRight: state.gapRight,
    rings: life?.rings ?? null,
    family: life?.family ?? null,
  }
}

function textOf(value: unknown): string {
  if (value === undefined || value === null) return ''
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) return value.join('; ')
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}
