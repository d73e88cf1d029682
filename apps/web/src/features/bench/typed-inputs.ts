import type { Calculator } from '@glandkeeper/bench/calculator'
import type { InputProblem } from '@glandkeeper/engines/outcome'
import { formatFigure, inInches } from '@glandkeeper/units/figure'
import { type MeasureProblem, readMeasure } from '@glandkeeper/units/read-measure'
import { placesOf } from './figures-in-words.ts'
import { type BenchField, fieldsOf } from './fields.ts'

/** What stands in the boxes, as typed. */
export type Texts = Readonly<Record<string, string>>

export interface Reading {
  /** The answer, or null while something is missing or wrong. */
  readonly answer: Readonly<Record<string, unknown>> | null
  /** The inputs it was computed from; null with the answer. */
  readonly given: Readonly<Record<string, unknown>> | null
  /** What is wrong, by the name of the input. */
  readonly faults: Readonly<Record<string, string>>
  /** A fault that belongs to no single input. */
  readonly problem: InputProblem | null
  /** How a figure with a unit of its own was read: `7.9 mm`. */
  readonly readAs: Readonly<Record<string, string>>
}

/** Reads the boxes and computes. Nothing here throws: half-typed figures are the usual case. */
export function readAndCompute(calculator: Calculator, texts: Texts): Reading {
  const faults: Record<string, string> = {}
  const readAs: Record<string, string> = {}
  const values: Record<string, unknown> = {}
  for (const field of fieldsOf(calculator.input)) {
    const text = (texts[field.name] ?? '').trim()
    if (text === '') continue
    const read = readField(field, text)
    if ('fault' in read) faults[field.name] = read.fault
    else values[field.name] = read.value
    if ('readAs' in read && read.readAs !== undefined) readAs[field.name] = read.readAs
  }
  const parsed = calculator.input.safeParse(values)
  for (const issue of parsed.error?.issues ?? []) {
    const name = String(issue.path[0])
    faults[name] ??= values[name] === undefined ? 'needed' : issue.message
  }
  if (!parsed.success || Object.keys(faults).length > 0) return { answer: null, given: null, faults, problem: null, readAs }
  const outcome = calculator.compute(parsed.data)
  if (outcome.ok) return { answer: outcome, given: parsed.data, faults, problem: null, readAs }
  const { problem } = outcome
  const isAtField = problem.field in calculator.input.shape
  return {
    answer: null,
    given: null,
    faults: isAtField ? { [problem.field]: problem.detail } : {},
    problem: isAtField ? null : problem,
    readAs,
  }
}

type FieldReading = { readonly value: unknown; readonly readAs?: string } | { readonly fault: string }

function readField(field: BenchField, text: string): FieldReading {
  switch (field.kind) {
    case 'choice':
    case 'text':
      return { value: text }
    case 'yes or no':
      return { value: text === 'yes' }
    case 'figure':
      return readFigure(text, field)
    case 'figures':
      return readFigures(text, field)
  }
}

function readFigure(text: string, { meta }: Extract<BenchField, { kind: 'figure' | 'figures' }>): FieldReading {
  const read = readMeasure(text, meta.unit)
  if (!read.ok) return { fault: inWords(read.problem) }
  const isOwnUnit = read.written === meta.unit
  return {
    value: read.value,
    ...(!isOwnUnit && { readAs: formatFigure(read.value, meta.unit, placesOf(meta) + 2) }),
    ...(isOwnUnit && besideInInches(read.value, meta.unit)),
  }
}

function besideInInches(value: number, unit: string): { readAs?: string } {
  const inches = value === 0 ? null : inInches(value, unit)
  return inches === null ? {} : { readAs: inches }
}

/** Several figures: apart by semicolons, or by spaces where they are plain numbers. */
function readFigures(text: string, field: Extract<BenchField, { kind: 'figures' }>): FieldReading {
  const parts = (text.includes(';') ? text.split(';') : /^[\d.\s-]+$/.test(text) ? text.split(/\s+/) : [text]).filter(
    (part) => part.trim() !== '',
  )
  const readings = parts.map((part) => readFigure(part, { ...field, kind: 'figure' }))
  const wrong = readings.find((reading) => 'fault' in reading)
  if (wrong) return wrong
  return { value: readings.map((reading) => ('value' in reading ? reading.value : undefined)) }
}

function inWords(problem: MeasureProblem): string {
  switch (problem.code) {
    case 'measure/empty':
      return 'needed'
    case 'measure/no-number':
      return 'write a figure, such as 8.5, 5/16 in or 150 psi'
    case 'measure/ambiguous-comma':
      return `${problem.text} can be read two ways: write a point for decimals, nothing between thousands`
    case 'measure/unknown-unit':
      return `${problem.written} is not a unit for this; it is in ${problem.unit}`
  }
}
