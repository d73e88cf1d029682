import { readFileSync } from 'node:fs'
import path from 'node:path'
import { packingSection } from '@glandkeeper/engines/gland/gland'
import { ringLength } from '@glandkeeper/engines/gland/ring-length'
import { inchesToMillimetres, MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { type Millimetre, mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

interface Published {
  readonly id: string
  readonly inputs: Readonly<Record<string, number>>
  readonly output: Readonly<Record<string, number>>
}

/** Section and length from bore and shaft: R. K. Mobley, Root Cause Failure Analysis, pp. 225-226; the inch case is its worked example. */
const cases = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/section.json'), 'utf8')) as Published[]

/** A figure of the table by its name, whichever of the two units it is printed in; null where the row has none. */
function printed(figures: Readonly<Record<string, number>>, name: string): Millimetre | null {
  const [inches, millimetres] = [figures[`${name}_in`], figures[`${name}_mm`]]
  if (inches !== undefined) return inchesToMillimetres(inches)
  return millimetres === undefined ? null : mm(millimetres)
}

const sections = cases.filter(({ output }) => printed(output, 's') !== null)
const lengths = cases.filter(({ output }) => printed(output, 'L') !== null)

it('the table has its seven sections and eight lengths', () => {
  expect([sections.length, lengths.length]).toEqual([7, 8])
})

describe('packing section against the handbook', () => {
  it.each(sections)('$id: $inputs', ({ inputs, output }) => {
    expect(packingSection(printed(inputs, 'D'), printed(inputs, 'd'))).toBeCloseTo(printed(output, 's')!, 9)
  })
})

describe('ring length against the handbook, to the four decimals printed', () => {
  it.each(lengths)('$id: $inputs', ({ inputs, output }) => {
    const stemDiameter = printed(inputs, 'd')!
    const section = printed(inputs, 's') ?? packingSection(printed(inputs, 'D'), stemDiameter)!
    const ring = ringLength({ stemDiameter, section, allowance: printed(inputs, 'allowance') ?? mm(0) })
    const inInches = 'L_in' in output
    if (!ring.ok) throw new Error(ring.problem.detail)
    expect(inInches ? ring.edgeLength / MILLIMETRES_PER_INCH : ring.edgeLength).toBeCloseTo(
      output[inInches ? 'L_in' : 'L_mm']!,
      4,
    )
  })
})
