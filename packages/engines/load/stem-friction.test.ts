import { bar, megapascals, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stemFriction, stemFrictionWithDecay } from './stem-friction.ts'
import { stressProfile } from './stress-profile.ts'

const plain = {
  stemDiameter: mm(22),
  setHeight: mm(32.5),
  packingStress: megapascals(20),
  friction: ratio(0.1),
  lateralRatio: ratio(0.5),
}
const walls = {
  boxBore: mm(35),
  stemDiameter: mm(22),
  boreFriction: ratio(0.1),
  boreLateralRatio: ratio(0.5),
  stemFriction: ratio(0.1),
  stemLateralRatio: ratio(0.5),
}

describe('stem friction', () => {
  it('of 20 MPa over 32.5 mm on a 22 mm stem is 2,246 N: π · 22 · 32.5 · 20 · 0.1 · 0.5', () => {
    expect(stemFriction(plain)).toMatchObject({ friction: expect.closeTo(Math.PI * 22 * 32.5, 9) as number })
  })

  it('with decay balances what the stem takes: with friction at the stem alone, all the load that is lost', () => {
    const stemOnly = { ...walls, boreFriction: ratio(0), packingStress: megapascals(20) }
    const force = stemFrictionWithDecay({ ...stemOnly, setHeight: mm(40) })
    const profile = stressProfile({ ...stemOnly, ringHeights: [mm(40)] })
    const lost = profile.ok ? (20 - profile.bottomStress) * (Math.PI / 4) * (35 ** 2 - 22 ** 2) : 0
    expect(force.ok && force.friction / lost).toBeCloseTo(1, 10)
  })

  it('with decay is never more than without, and comes up to it as the bore gets smooth and the set short', () => {
    const friction = fc.double({ min: 0, max: 0.5, noNaN: true })
    fc.assert(
      fc.property(friction, fc.double({ min: 1e-9, max: 200, noNaN: true }), (boreFriction, height) => {
        const input = { ...walls, boreFriction: ratio(boreFriction), packingStress: megapascals(20), setHeight: mm(height) }
        const decayed = stemFrictionWithDecay(input)
        const constant = stemFriction({ ...plain, setHeight: mm(height) })
        return (
          decayed.ok &&
          constant.ok &&
          decayed.friction <= constant.friction &&
          (height > 1e-6 || decayed.friction > 0.999999 * constant.friction)
        )
      }),
    )
  })

  it('without any friction at the walls is nought', () => {
    const smooth = { ...walls, boreFriction: ratio(0), stemFriction: ratio(0), packingStress: megapascals(20), setHeight: mm(40) }
    expect(stemFrictionWithDecay(smooth)).toEqual({ ok: true, friction: 0 })
  })

  it.each([
    [{ stemDiameter: mm(0) }, 'number/not-positive', 'stemDiameter'],
    [{ setHeight: mm(-1) }, 'number/not-positive', 'setHeight'],
    [{ friction: ratio(-0.1) }, 'number/negative', 'friction'],
    [{ packingStress: megapascals(1e308) }, 'number/out-of-range', 'packingStress'],
  ])('refuses %o', (wrong, code, field) => {
    expect(stemFriction({ ...plain, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('takes megapascals only', () => {
    // @ts-expect-error bar is no stress
    stemFriction({ ...plain, packingStress: bar(200) })
    // @ts-expect-error a bare number is no height
    stemFriction({ ...plain, setHeight: 30 })
  })
})
