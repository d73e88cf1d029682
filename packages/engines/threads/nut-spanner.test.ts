import { describe, expect, it } from 'vitest'
import { spannersOf } from './nut-spanner.ts'
import { studThreads } from './stud-threads.ts'

const markings = (designation: string) => {
  const found = spannersOf(designation)
  return found.ok ? found.spanners.map(({ marking, hexagon }) => `${marking}, ${hexagon}`) : []
}

describe('spanners', () => {
  it('of the four sizes that changed in 1982 are both', () => {
    expect(markings('M10')).toEqual(['16 mm, present', '17 mm, before 1982'])
    expect(markings('M22')).toEqual(['34 mm, present', '32 mm, before 1982'])
    expect(markings('M16')).toEqual(['24 mm, present'])
  })

  it('of a fine metric thread are those of the coarse one', () => {
    expect(markings('M12x1.25')).toEqual(markings('M12'))
  })

  it('of BSW are the large hexagon and the wartime one, which BSF has too', () => {
    expect(markings('1/2-12 BSW')).toEqual(['1/2 W, large', '7/16 W, small'])
    expect(markings('1/2-16 BSF')).toEqual(['7/16 W, small'])
    expect(markings('1/4-26 BSF')).toEqual(['3/16 W, small'])
  })

  it('of a unified thread are plain and heavy', () => {
    expect(markings('5/8-11 UNC')).toEqual(['15/16 in, plain', '1-1/16 in, heavy'])
    expect(markings('1-8 UNC')).toEqual(['1-1/2 in, plain', '1-5/8 in, heavy'])
  })

  it('are known for every thread, each wider than its stud and narrower than twice and a bit', () => {
    for (const { designation, nominalDiameter } of studThreads) {
      const found = spannersOf(designation)
      expect(found.ok && found.spanners.length, designation).toBeGreaterThan(0)
      if (found.ok)
        for (const { acrossFlats } of found.spanners) {
          expect(acrossFlats).toBeGreaterThan(1.4 * nominalDiameter)
          expect(acrossFlats).toBeLessThan(2.2 * nominalDiameter)
        }
    }
  })

  it('of an unknown thread are refused', () => {
    expect(spannersOf('1/2 gas')).toMatchObject({ ok: false, problem: { code: 'thread/unknown' } })
  })
})
