import { readFileSync } from 'node:fs'
import path from 'node:path'
import { ringsForBox } from '@glandkeeper/engines/gland/box-space'
import { fitSection } from '@glandkeeper/engines/gland/fitted-section'
import { jointPositions } from '@glandkeeper/engines/gland/joints'
import { ringLength, wrapsOnMandrel } from '@glandkeeper/engines/gland/ring-length'
import { ringSet } from '@glandkeeper/engines/gland/ring-set'
import { standardSections } from '@glandkeeper/engines/gland/standard-sections'
import type { Outcome } from '@glandkeeper/engines/outcome'
import { inchesToMillimetres, MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'
import { degrees, mm, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

type Row = Readonly<Record<string, number>> & { readonly source: string; readonly mark: string }
const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/gland.json'), 'utf8')) as Readonly<
  Record<string, Row[]>
>

/** The figures of an outcome; a refusal fails the test with its sentence. */
function figures<Figures extends object>(outcome: Outcome<Figures>): Readonly<Figures> {
  if (!outcome.ok) throw new Error(outcome.problem.detail)
  return outcome
}

const deepBox = { boxDepth: mm(200), noseLength: mm(40), leastEngagement: mm(0), keepClear: mm(0) }

describe('heights of a set, worked out: n s (1 - c)', () => {
  it.each(values['consolidation']!)('$rings rings of $section_mm mm at $share: $loose_mm to $consolidated_mm', (row) => {
    const { rings, section_mm, share, loose_mm, consolidated_mm, takeUp_mm } = row
    const input = { ...deepBox, section: mm(section_mm!), consolidation: ratio(share!), rings: rings! }
    const set = figures(ringSet(input))
    expect(set.looseHeight).toBeCloseTo(loose_mm!, 9)
    expect(set.consolidatedHeight).toBeCloseTo(consolidated_mm!, 9)
    expect(set.takeUp).toBeCloseTo(takeUp_mm!, 9)
  })

  it.each(values['looseRings']!)('$rings loose rings of $section_mm mm in $depth_mm mm with an entry of $entry_mm mm', (row) => {
    const input = { ...deepBox, boxDepth: mm(row['depth_mm']!), section: mm(row['section_mm']!), consolidation: ratio(0.3) }
    expect(figures(ringsForBox({ ...input, leastEngagement: mm(row['entry_mm']!) })).looseRings).toBe(row['rings'])
  })
})

describe('circumferences, read in a table of circles cut off at five decimals', () => {
  it.each(values['circumference']!)('$diameter in: $circumference in', ({ diameter, circumference }) => {
    const section = inchesToMillimetres(0.5)
    const stemDiameter = inchesToMillimetres(diameter!)
    const inside = figures(ringLength({ stemDiameter, section })).innerCircumference
    expect(Math.abs(inside / MILLIMETRES_PER_INCH - circumference!)).toBeLessThan(1e-5)
    const around = figures(ringLength({ stemDiameter: mm(stemDiameter - section), section })).midLength
    expect(Math.abs(around / MILLIMETRES_PER_INCH - circumference!)).toBeLessThan(1e-5)
    const outside = figures(ringLength({ stemDiameter: mm(stemDiameter - 2 * section), section: section })).outerCircumference
    expect(Math.abs(outside / MILLIMETRES_PER_INCH - circumference!)).toBeLessThan(1e-5)
  })
})

describe('offset of a skive for a section of 1, natural cotangents from memory', () => {
  it.each(values['cotangent']!)('$angle degrees: $offset', ({ angle, offset }) => {
    const ring = figures(ringLength({ stemDiameter: mm(10), section: mm(1), cutAngle: degrees(angle!) }))
    expect(ring.cutOffset).toBeCloseTo(offset!, 5)
    expect(ring.overallLength - ring.edgeLength).toBeCloseTo(offset!, 5)
  })
})

describe('a ring cut short, so that its ends stay apart', () => {
  it.each(values['cutShort']!)('$shaft_in in shaft, $section_in in section, $short_in in short: $length_in in', (row) => {
    const stemDiameter = inchesToMillimetres(row['shaft_in']!)
    const allowance = inchesToMillimetres(-row['short_in']!)
    const ring = figures(ringLength({ stemDiameter, section: inchesToMillimetres(row['section_in']!), allowance }))
    expect(ring.edgeLength / MILLIMETRES_PER_INCH).toBeCloseTo(row['length_in']!, 4)
  })
})

describe('joints staggered', () => {
  it.each(values['stagger']!)('from $from to $to degrees nothing is too close, and just under $from it is', ({ from, to }) => {
    const codes = (stagger: number) =>
      figures(jointPositions({ rings: 5, stagger: degrees(stagger) })).findings.map((one) => one.code)
    for (let stagger = from!; stagger <= to!; stagger += 1) expect(codes(stagger)).not.toContain('joints/neighbours-too-close')
    expect(codes(from! - 0.1)).toContain('joints/neighbours-too-close')
  })
})

describe('sections of the trade', () => {
  it.each(values['shaftToSection']!)('a shaft up to $toShaft_in in takes a section of $section_in in', (row) => {
    for (const shaft of [row['overShaft_in']! + 1 / 16, row['toShaft_in']!]) {
      const boxBore = inchesToMillimetres(shaft + 2 * row['section_in']!)
      const { inch } = figures(fitSection({ boxBore, stemDiameter: inchesToMillimetres(shaft) }))
      expect(inch).toMatchObject({ section: { designation: '5/16 in' }, verdict: 'fits' })
    }
  })

  it('common practice, no source: 5/16 inch is sold as 8 mm, 0.0625 mm more', () => {
    const size = standardSections.find(({ designation }) => designation === '5/16 in')!
    expect(size.soldAs! - size.size).toBe(0.0625)
  })

  it('common practice, no source: one more wrap than rings on the mandrel', () => {
    expect(figures(wrapsOnMandrel(5)).wraps).toBe(6)
  })

  it('standard sections from memory: arithmetic only, inch sizes are whole sixteenths', () => {
    const sixteenths = standardSections
      .filter(({ system }) => system === 'inch')
      .map(({ size }) => (size / MILLIMETRES_PER_INCH) * 16)
    for (const count of sixteenths) expect(count).toBeCloseTo(Math.round(count), 9)
    expect([sixteenths[0], sixteenths.at(-1)]).toEqual([2, 16])
  })
})
