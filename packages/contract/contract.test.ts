import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { endpoints } from './endpoints.ts'
import { eventKinds, FieldEvent } from './events.ts'
import { headingOf, importColumns } from './import-columns.ts'
import { faultsOf, problemOf, problems } from './problem.ts'
import { quantities, quantity, unusualQuantities } from './quantity.ts'
import { text } from './text.ts'

/** Every schema inside a schema, each once, with the road to it. */
function* within(schema: z.core.$ZodType, road: string, seen = new Set<z.core.$ZodType>()): Generator<[string, z.core.$ZodType]> {
  if (seen.has(schema)) return
  seen.add(schema)
  yield [road, schema]
  const { def } = schema._zod as unknown as { def: Record<string, unknown> }
  const parts: [string, unknown][] = [
    ...Object.entries((def['shape'] as Record<string, unknown> | undefined) ?? {}),
    ...(['innerType', 'element', 'in', 'out', 'keyType', 'valueType', 'left', 'right'] as const).map(
      (name): [string, unknown] => [name, def[name]],
    ),
    ...((def['options'] as unknown[] | undefined) ?? []).map((option, index): [string, unknown] => [`option ${index}`, option]),
  ]
  for (const [name, part] of parts)
    if (part !== null && typeof part === 'object' && '_zod' in part)
      yield* within(part as z.core.$ZodType, `${road} > ${name}`, seen)
}

const schemas = Object.entries(endpoints).flatMap(([name, endpoint]) =>
  (['params', 'query', 'body', 'ok'] as const).flatMap((part) => {
    const schema = (endpoint as Partial<Record<typeof part, z.core.$ZodType>>)[part]
    return schema ? [...within(schema, `${name}.${part}`)] : []
  }),
)
const allSchemas = [...schemas, ...within(FieldEvent, 'FieldEvent')]

describe('every number of the contract', () => {
  it('is a quantity with a label, a unit and a possible range', () => {
    const numbers = allSchemas.filter(([, schema]) => schema._zod.def.type === 'number')
    const bare = numbers.filter(
      ([road, schema]) => !quantities.has(schema) && !road.endsWith('> status') && !road.endsWith('> version'),
    )
    expect(bare.map(([road]) => road)).toEqual([])
    expect(numbers.length).toBeGreaterThan(30)
  })

  it('has a usual range inside the possible one', () => {
    for (const [road, schema] of allSchemas) {
      const meta = quantities.get(schema as z.ZodType)
      if (!meta) continue
      expect([road, meta.min < meta.max, meta.label !== '']).toEqual([road, true, true])
      if (meta.usual)
        expect([road, meta.usual[0] >= meta.min, meta.usual[0] < meta.usual[1], meta.usual[1] <= meta.max]).toEqual([
          road,
          true,
          true,
          true,
        ])
    }
  })
})

it('every object that comes in refuses fields it does not know', () => {
  const incoming = schemas.filter(([road, schema]) => /\.(params|query|body)/.test(road) && schema._zod.def.type === 'object')
  const loose = incoming.filter(([, schema]) => (schema as z.ZodObject)._zod.def.catchall?._zod.def.type !== 'never')
  expect(loose.map(([road]) => road)).toEqual([])
  expect(incoming.length).toBeGreaterThan(10)
})

describe('a quantity', () => {
  const travel = quantity({ label: 'Travel', unit: 'mm', min: 0, max: 60, step: 0.1, usual: [0, 25] })

  it('says its label, limit and unit when it is refused, and refuses what is no number', () => {
    const said = (value: unknown) => travel.safeParse(value).error?.issues[0]?.message
    expect(said(99)).toBe('Travel: at most 60 mm')
    expect(said(-1)).toBe('Travel: at least 0 mm')
    for (const value of [NaN, Infinity, '7', null]) expect(said(value)).toBe('Travel: must be a number')
  })

  it('that is possible and unusual is named, also behind optional and nullable', () => {
    const schema = z.object({ one: travel, two: travel.optional(), three: travel.nullable() })
    expect(unusualQuantities(schema, { one: 10, two: 40, three: 30 }).map((unusual) => unusual.field)).toEqual(['two', 'three'])
  })
})

describe('problems', () => {
  it('have a code of word and what, a status, a title and a help, and there are this many', () => {
    expect(Object.keys(problems)).toHaveLength(74)
    for (const [code, { status, title, help }] of Object.entries(problems)) {
      expect(code).toMatch(/^[a-z]+\/[a-z-]+$/)
      expect(status).toBeGreaterThanOrEqual(400)
      expect(title.length).toBeGreaterThan(8)
      expect(help.endsWith('.')).toBe(true)
      expect(problemOf(code as keyof typeof problems).type).toBe(`/problems/${code}`)
    }
  })

  it('point at each fault as RFC 6901 writes it', () => {
    const schema = z.strictObject({ 'a/b': z.object({ '~': z.array(z.string()) }) })
    const { error } = schema.safeParse({ 'a/b': { '~': ['x', 1] }, extra: true })
    expect(faultsOf(error!).map((fault) => fault.pointer)).toEqual(['#/a~1b/~0/1', '#/extra'])
  })
})

describe('import columns', () => {
  it('answer to no heading twice within a kind of file', () => {
    for (const columns of Object.values(importColumns)) {
      const names = columns.flatMap((column) => [column.name, ...column.alsoCalled])
      expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([])
    }
  })

  it('write a heading with the unit of the figures under it', () => {
    const bore = importColumns.valves.find((column) => column.field === 'boxBore')
    expect(bore && headingOf(bore)).toBe('box bore [mm]')
  })
})

it('there are nine kinds of entry', () => {
  expect(eventKinds.toSorted()).toEqual([
    'fact.corrected',
    'gland.nipped',
    'leak.seen',
    'leak.treated',
    'packing.renewed',
    'reading.taken',
    'repair.deferred',
    'ring.added',
    'visit.missed',
  ])
})

describe('text', () => {
  it('refuses what a database cannot keep, and keeps every letter', () => {
    const read = (value: string) => text(40).safeParse(value).success
    expect(['\u0000', 'a\u0007b', '\ud800', '\udc00x'].map(read)).toEqual([false, false, false, false])
    expect(['Ø 45 ≤ 6″', 'Zürich', '弁', '😀', 'two\nlines'].map(read)).toEqual([true, true, true, true, true])
  })

  it('that comes in is always read so: no bare string without a pattern', () => {
    const bare = schemas.filter(([road, schema]) => {
      const { checks } = schema._zod.def as { checks?: unknown[] }
      return /\.(query|body)/.test(road) && schema._zod.def.type === 'string' && !checks?.length && !('format' in schema._zod.def)
    })
    expect(bare.map(([road]) => road)).toEqual(['mapImport.body > columns > element > heading'])
  })
})
