import { readFileSync } from 'node:fs'
import path from 'node:path'
import { packingSection } from '@glandkeeper/engines/gland/gland'
import { inchesToMillimetres } from '@glandkeeper/units/convert'
import { mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

interface Published {
  readonly id: string
  readonly inputs: Readonly<Record<string, number>>
  readonly output: number | { readonly s_mm: number }
}

/** Section from bore and shaft: R. K. Mobley, Root Cause Failure Analysis, pp. 225-226; the inch case is its worked example. */
const cases = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/section.json'), 'utf8')) as Published[]

describe('packing section against the handbook', () => {
  it.each(cases)('$id: $inputs', ({ inputs, output }) => {
    const inInches = 'D_in' in inputs
    const bore = inInches ? inchesToMillimetres(inputs['D_in']!) : mm(inputs['D_mm']!)
    const stem = inInches ? inchesToMillimetres(inputs['d_in']!) : mm(inputs['d_mm']!)
    const section = typeof output === 'number' ? inchesToMillimetres(output) : output.s_mm
    expect(packingSection(bore, stem)).toBeCloseTo(section, 9)
  })
})
