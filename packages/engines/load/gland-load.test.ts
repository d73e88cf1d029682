import { bar, megapascals, mm, newtons } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { glandLoad, packingArea, stressFromLoad } from './gland-load.ts'

const gland = { boxBore: mm(35), stemDiameter: mm(22), packingStress: megapascals(20), studCount: 2 }

describe('gland load', () => {
  it('of 20 MPa in a 35 mm bore on a 22 mm stem is 11,639.6 N: 20 · π/4 · (35² - 22²) = 20 · 581.98', () => {
    const area = (Math.PI / 4) * (35 ** 2 - 22 ** 2)
    const load = glandLoad(gland)
    expect(load).toMatchObject({ ok: true, area: expect.closeTo(area, 9) as number })
    expect(load.ok && [load.glandLoad, load.loadPerStud]).toEqual([expect.closeTo(20 * area, 8), expect.closeTo(10 * area, 8)])
  })

  it('and the stress from it lead back to each other', () => {
    const bore = fc.double({ min: 10, max: 300, noNaN: true })
    fc.assert(
      fc.property(
        bore,
        fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        (boxBore, share, studCount) => {
          const box = { boxBore: mm(boxBore), stemDiameter: mm(boxBore * share), studCount }
          const load = glandLoad({ ...box, packingStress: megapascals(30) })
          const back = load.ok && stressFromLoad({ ...box, loadPerStud: load.loadPerStud })
          return back && back.ok && Math.abs(back.packingStress - 30) < 1e-9
        },
      ),
    )
  })

  it('grows with the square of the size, and does not depend on the number of studs as a whole', () => {
    const double = glandLoad({ ...gland, boxBore: mm(70), stemDiameter: mm(44), studCount: 4 })
    const single = glandLoad(gland)
    expect(double.ok && single.ok && double.glandLoad / single.glandLoad).toBeCloseTo(4, 12)
    expect(double.ok && double.glandLoad / double.loadPerStud).toBeCloseTo(4, 12)
  })

  it.each([
    [{ boxBore: mm(22) }, 'gland/bore-not-larger-than-stem', 'boxBore'],
    [{ stemDiameter: mm(0) }, 'number/not-positive', 'stemDiameter'],
    [{ packingStress: megapascals(-1) }, 'number/negative', 'packingStress'],
    [{ studCount: 0 }, 'count/not-whole', 'studCount'],
    [{ studCount: 2.5 }, 'count/not-whole', 'studCount'],
    [{ packingStress: megapascals(1e308) }, 'number/out-of-range', 'packingStress'],
  ])('refuses %o', (wrong, code, field) => {
    expect(glandLoad({ ...gland, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('says in words which figure is wrong', () => {
    expect(glandLoad({ ...gland, studCount: 0 })).toMatchObject({
      problem: { detail: 'stud count must be a whole number of at least 1, not 0' },
    })
  })

  it('takes millimetres, megapascals and newtons only', () => {
    // @ts-expect-error a bare number is no bore
    packingArea({ boxBore: 35, stemDiameter: mm(22) })
    // @ts-expect-error bar is no stress
    glandLoad({ ...gland, packingStress: bar(200) })
    // @ts-expect-error a stress is no load
    stressFromLoad({ ...gland, loadPerStud: megapascals(1) })
    expect(stressFromLoad({ ...gland, loadPerStud: newtons(0) })).toMatchObject({ packingStress: 0 })
  })
})
