import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { sourceOf } from '@glandkeeper/engines/sources'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { NO_SINGLE_INPUT, shelves } from './calculator.ts'
import { calculators } from './calculators.ts'

/** Threads people have, one they mistype, and whatever else a text may be. */
const texts = fc.oneof(
  fc.constantFrom('M12', '1/2-13 UNC', '5/8-11 BSW', 'M12x1.25', 'M99'),
  fc.string({ minLength: 2, maxLength: 24 }),
)

/** Anything an input may hold by its schema, the ends of its range often. */
function arbitraryOf(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  const inner = innermost(schema)
  const mayBeMissing = schema instanceof z.ZodOptional || schema instanceof z.ZodDefault
  return mayBeMissing ? fc.option(valueOf(inner), { nil: undefined }) : valueOf(inner)
}

function valueOf(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  const meta = quantities.get(schema)
  if (meta) {
    const { min, max, step, usual = [min, max] } = meta
    const isCount = step === 1 && meta.unit === ''
    const usually = isCount
      ? fc.integer({ min: usual[0], max: usual[1] })
      : fc.double({ min: usual[0], max: usual[1], noNaN: true })
    return fc.oneof({ weight: 6, arbitrary: usually }, fc.constantFrom(min, max))
  }
  if (schema instanceof z.ZodEnum) return fc.constantFrom(...schema.options)
  if (schema instanceof z.ZodBoolean) return fc.boolean()
  if (schema instanceof z.ZodArray) return fc.array(valueOf(innermost(schema.element)), { minLength: 1, maxLength: 5 })
  return texts
}

function inputOf(schema: z.ZodObject): fc.Arbitrary<Record<string, unknown>> {
  const fields = Object.entries(schema.shape as Readonly<Record<string, z.core.$ZodType>>)
  return fc.record(Object.fromEntries(fields.map(([name, field]) => [name, arbitraryOf(field)])))
}

describe.each(calculators.map((calculator) => [calculator.name, calculator] as const))('%s', (_, calculator) => {
  it('computes its own example', () => {
    const outcome = calculator.compute(calculator.input.parse(calculator.example))
    expect(outcome).toMatchObject({ ok: true })
    expect(() => calculator.output.parse(outcome)).not.toThrow()
  })

  it('gives figures within its own answer, or names an input of its own, whatever it is given', () => {
    fc.assert(
      fc.property(inputOf(calculator.input), (given) => {
        const parsed = calculator.input.safeParse(given)
        fc.pre(parsed.success)
        const outcome = calculator.compute(parsed.data ?? {})
        if (outcome.ok) expect(calculator.output.safeParse(outcome).error).toBeUndefined()
        else expect([...Object.keys(calculator.input.shape), NO_SINGLE_INPUT]).toContain(outcome.problem.field)
      }),
      { numRuns: 200 },
    )
  })

  it('says where it comes from, what it holds for, and calls its inputs by notes they have', () => {
    expect(calculator.sources.length).toBeGreaterThan(0)
    for (const id of calculator.sources) expect(sourceOf(id).source).not.toBe('')
    expect(calculator.limits.length).toBeGreaterThan(30)
    expect(calculator.formula.length).toBeGreaterThan(0)
    expect(Object.keys(calculator.input.shape)).toEqual(expect.arrayContaining(Object.keys(calculator.notes ?? {})))
    expect(Object.keys(shelves)).toContain(calculator.shelf)
  })
})

it('no two calculators have one address or one title', () => {
  for (const part of ['name', 'title'] as const) {
    const all = calculators.map((calculator) => calculator[part])
    expect(all.filter((value, index) => all.indexOf(value) !== index)).toEqual([])
  }
})

it('every number that goes in or comes out is a quantity with a label and a unit', () => {
  const numbers = calculators.flatMap(({ name, input, output }) => [...within(input, name), ...within(output, name)])
  const bare = numbers.filter(([, schema]) => schema._zod.def.type === 'number' && !quantities.has(schema))
  expect(bare.map(([road]) => road)).toEqual([])
  expect(numbers.length).toBeGreaterThan(150)
})

function* within(schema: z.core.$ZodType, road: string): Generator<[string, z.core.$ZodType]> {
  const inner = innermost(schema)
  yield [road, inner]
  if (inner instanceof z.ZodArray) yield* within(inner.element, `${road} > each`)
  if (inner instanceof z.ZodObject) {
    for (const [name, part] of Object.entries(inner.shape as Readonly<Record<string, z.core.$ZodType>>))
      yield* within(part, `${road} > ${name}`)
  }
}
