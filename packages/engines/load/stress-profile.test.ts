import { bar, megapascals, mm, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bottomRingHolds, decayRate, lateralRatio, stressProfile } from './stress-profile.ts'

const alike = (friction: number, lateral: number) => ({
  boreFriction: ratio(friction),
  boreLateralRatio: ratio(lateral),
  stemFriction: ratio(friction),
  stemLateralRatio: ratio(lateral),
})
const set = {
  boxBore: mm(35),
  stemDiameter: mm(22),
  ...alike(0.1, 0.5),
  packingStress: megapascals(20),
  ringHeights: [mm(6.5), mm(6.5), mm(6.5)],
}

describe('stress down the set', () => {
  it('falls by exp(-2 · 0.1 · 0.5) = 0.9048 at each square ring, whatever its size', () => {
    for (const size of [1, 2, 10]) {
      const scaled = { ...set, boxBore: mm(35 * size), stemDiameter: mm(22 * size), ringHeights: [mm(6.5 * size)] }
      const found = stressProfile(scaled)
      expect(found.ok && found.bottomStress).toBeCloseTo(20 * Math.exp(-0.1), 10)
    }
  })

  it('decays at 4 · 0.05 / 13 = 0.01538 each mm in a 35 mm bore on a 22 mm stem', () => {
    expect(decayRate(set)).toMatchObject({ ok: true, decayRate: expect.closeTo(0.2 / 13, 14) as number })
  })

  it('weighs bore and stem by their girth: friction at the bore alone, 4 · 0.05 · 35 / (35² - 22²)', () => {
    const found = decayRate({ ...set, stemFriction: ratio(0) })
    expect(found).toMatchObject({ decayRate: expect.closeTo((4 * 0.05 * 35) / (35 ** 2 - 22 ** 2), 14) as number })
  })

  it('solves the equilibrium of a thin slice: the stress lost is the drag of both walls over the area', () => {
    const slice = 1e-4
    const found = stressProfile({ ...set, ringHeights: [mm(slice)] })
    const drag = Math.PI * (35 + 22) * slice * 0.1 * 0.5 * 20
    const lost = found.ok ? (20 - found.bottomStress) * (Math.PI / 4) * (35 ** 2 - 22 ** 2) : 0
    expect(lost / drag).toBeCloseTo(1, 5)
  })

  it('never rises on the way down, and unequal rings add up as one', () => {
    const height = fc.double({ min: 0.5, max: 30, noNaN: true })
    fc.assert(
      fc.property(fc.array(height, { minLength: 1, maxLength: 12 }), (heights) => {
        const found = stressProfile({ ...set, ringHeights: heights.map(mm) })
        const whole = stressProfile({ ...set, ringHeights: [mm(heights.reduce((sum, each) => sum + each, 0))] })
        return (
          found.ok &&
          whole.ok &&
          found.axialStresses.length === heights.length + 1 &&
          found.axialStresses.every((stress, index) => index === 0 || stress < found.axialStresses[index - 1]!) &&
          Math.abs(found.bottomStress - whole.bottomStress) < 1e-9 &&
          Math.abs(found.shareLeft - found.bottomStress / 20) < 1e-12
        )
      }),
    )
  })

  it.each([
    [{ ringHeights: [] }, 'packing/no-rings', 'ringHeights'],
    [{ ringHeights: [mm(6), mm(0)] }, 'number/not-positive', 'ringHeights'],
    [{ packingStress: megapascals(-1) }, 'number/negative', 'packingStress'],
    [{ boreFriction: ratio(-0.1) }, 'number/negative', 'boreFriction'],
    [{ stemDiameter: mm(40) }, 'gland/bore-not-larger-than-stem', 'boxBore'],
    [{ ringHeights: [mm(1e308), mm(1e308)] }, 'number/out-of-range', 'ringHeights'],
  ])('refuses %o', (wrong, code, field) => {
    expect(stressProfile({ ...set, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })
})

describe('lateral ratio', () => {
  it('of Poisson 0.46 is 0.8519: 0.46 / 0.54', () => {
    expect(lateralRatio(ratio(0.46))).toMatchObject({ ok: true, lateralRatio: expect.closeTo(0.46 / 0.54, 14) as number })
  })

  it.each([0, -0.1, 0.51, 1])('of Poisson %d is refused', (poisson) => {
    expect(lateralRatio(ratio(poisson))).toMatchObject({ problem: { code: 'packing/poisson-out-of-range' } })
  })
})

describe('the bottom ring', () => {
  const ring = { bottomStress: megapascals(12), stemLateralRatio: ratio(0.5), systemPressure: bar(40), pressureFactor: ratio(1) }

  it('at 12 MPa and 0.5 presses with 6 MPa: holds 60 bar, not 61, and not 40 with a factor of 2', () => {
    expect(bottomRingHolds({ ...ring, systemPressure: bar(60) })).toMatchObject({ radialStress: 6, holds: true })
    expect(bottomRingHolds({ ...ring, systemPressure: bar(61) })).toMatchObject({ holds: false })
    expect(bottomRingHolds({ ...ring, pressureFactor: ratio(2) })).toMatchObject({ neededStress: 8, holds: false })
  })

  it('holds a vacuum with any stress', () => {
    expect(bottomRingHolds({ ...ring, systemPressure: bar(-1) })).toMatchObject({ neededStress: 0, holds: true })
  })

  it('takes bar and megapascals, not one for the other', () => {
    // @ts-expect-error bar is no stress
    bottomRingHolds({ ...ring, bottomStress: bar(120) })
    // @ts-expect-error a bare number is no pressure
    bottomRingHolds({ ...ring, systemPressure: 40 })
  })
})
