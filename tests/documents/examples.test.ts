import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { defaultPrior } from '@glandkeeper/engines/wear/prior'
import * as quantity from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

const packages = path.resolve(import.meta.dirname, '../../packages')

/** Values the examples speak of without making them: one gland, its facts, a falling reserve, and what a plant starts from. */
const { mm, instant } = quantity
const gland = {
  boxBore: mm(45),
  stemDiameter: mm(28),
  boxDepth: mm(48),
  noseLength: mm(20),
  leastEngagement: mm(3.2),
  keepClear: mm(3),
  studThread: 'M12',
}
const standing = [
  {
    id: 'a',
    takenAt: instant(0),
    standsAs: 'as entered',
    fact: { kind: 'reading.taken', gapLeft: mm(7.4), gapRight: mm(6.6), threadRemaining: null, stem: null, leak: null },
  },
]
const levels = [0, 1, 2].map((n) => ({ at: instant(Date.UTC(2026, 0, 1) + n * 50 * 86_400_000), reserve: mm(2.76 - n * 0.6) }))
const spoken = {
  gland,
  standing,
  levels,
  valveId: '019a0000-0000-7000-8000-000000000001',
  now: instant(Date.UTC(2026, 0, 1)),
  defaultPrior,
}

interface Example {
  readonly file: string
  readonly call: string
  readonly gives: string
}

function examplesIn(folder: string): Example[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const place = path.join(folder, entry.name)
    if (entry.isDirectory()) return ['dist', 'node_modules'].includes(entry.name) ? [] : examplesIn(place)
    if (!/(?<!\.test|\.d)\.ts$/.test(entry.name)) return []
    const text = readFileSync(place, 'utf8')
    return [...text.matchAll(/(?:@example |\* )(?<call>[^\n]*?) \/\/ → (?<gives>[^\n]*?)(?: \*\/)?\n/g)].map((match) => ({
      file: path.relative(packages, place),
      call: match.groups!['call']!.replace(/^@example /, ''),
      gives: match.groups!['gives']!,
    }))
  })
}

const examples = examplesIn(packages)

describe('the examples in the docstrings', () => {
  it('are there', () => expect(examples.length).toBeGreaterThan(15))

  it.each(examples)('$file: $call', async ({ file, call, gives }) => {
    const own = (await import(path.join(packages, file))) as Record<string, unknown>
    const seen = { ...quantity, ...own, ...spoken }
    const evaluate = (expression: string): unknown =>
      // oxlint-disable-next-line typescript/no-implied-eval -- running what a comment says is the point here
      new Function(...Object.keys(seen), `return (${expression})`)(...Object.values(seen))
    const result = evaluate(call)
    const promised = evaluate(gives)
    if (typeof promised === 'number') expect(result).toBeCloseTo(promised, 9)
    else expect(normal(result)).toEqual(normal(promised))
  })
})

/** A figure and its unit are kept together by a no-break space, which nobody types in a comment; sums have binary dust. */
function normal(value: unknown): unknown {
  if (typeof value === 'string') return value.replaceAll('\u00a0', ' ')
  if (typeof value === 'number') return Math.round(value * 1e9) / 1e9
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, normal(part)]))
}
