import { mm, newtonMetres, newtons, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { glandLoad } from './gland-load.ts'
import { nutTorque, stressFromTorque, torqueSteps, usualNutFactors, usualTorqueShares } from './nut-torque.ts'

const nuts = { glandLoad: newtons(26_900), studCount: 2, studDiameter: mm(12), nutFactor: ratio(0.15) }
const torqued = {
  boxBore: mm(45),
  stemDiameter: mm(28),
  torque: newtonMetres(24.2),
  studCount: 2,
  studDiameter: mm(12),
  nutFactor: { low: ratio(0.1), usual: ratio(0.15), high: ratio(0.2) },
}

describe('nut torque', () => {
  it('of 26.9 kN on two M12 at 0.15 is 24.21 N·m: 0.15 · 13,450 · 0.012', () => {
    expect(nutTorque(nuts)).toEqual({ ok: true, torque: expect.closeTo(24.21, 12) as number })
  })

  it('in steps of 30, 60 and 100 % ends at the whole', () => {
    const steps = torqueSteps(newtonMetres(50), usualTorqueShares)
    expect(steps.ok && steps.steps.map((step) => step.torque)).toEqual([15, 30, 50])
  })

  it('measured gives the stress it was worked out from, between the ends the nut factor leaves open', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 200, noNaN: true }), (torque) => {
        const back = stressFromTorque({ ...torqued, torque: newtonMetres(torque) })
        if (!back.ok || !(back.lowest < back.usual && back.usual < back.highest)) return false
        const load = glandLoad({ ...torqued, packingStress: back.usual })
        const again = load.ok && nutTorque({ ...torqued, glandLoad: load.glandLoad, nutFactor: ratio(0.15) })
        return again && again.ok && Math.abs(again.torque - torque) < 1e-9
      }),
    )
  })

  it('gives twice the stress at half the nut factor', () => {
    const found = stressFromTorque(torqued)
    expect(found.ok && found.highest / found.lowest).toBeCloseTo(2, 12)
  })

  it('has usual nut factors inside their ranges, and the unknown as wide as all of them', () => {
    for (const range of Object.values(usualNutFactors)) {
      expect(range.low).toBeLessThan(range.usual)
      expect(range.usual).toBeLessThan(range.high)
      expect(usualNutFactors.unknown.low).toBeLessThanOrEqual(range.low)
      expect(usualNutFactors.unknown.high).toBeGreaterThanOrEqual(range.high)
    }
  })

  it.each([
    [{ glandLoad: newtons(-1) }, 'number/negative', 'glandLoad'],
    [{ studCount: 0 }, 'count/not-whole', 'studCount'],
    [{ studDiameter: mm(0) }, 'number/not-positive', 'studDiameter'],
    [{ nutFactor: ratio(0) }, 'number/not-positive', 'nutFactor'],
    [{ glandLoad: newtons(1e308), studDiameter: mm(1e10) }, 'number/out-of-range', 'glandLoad'],
  ])('refuses %o', (wrong, code, field) => {
    expect(nutTorque({ ...nuts, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it.each([[[]], [[0.5]], [[0.6, 0.3, 1]], [[0, 1]], [[0.5, 0.5, 1]], [[0.5, 1, 1.2]]])('refuses steps %o', (shares) => {
    expect(torqueSteps(newtonMetres(50), shares.map(ratio))).toMatchObject({ problem: { code: 'torque/steps-not-rising' } })
  })

  it('refuses a range of nut factors that does not rise', () => {
    const nutFactor = { low: ratio(0.2), usual: ratio(0.15), high: ratio(0.3) }
    expect(stressFromTorque({ ...torqued, nutFactor })).toMatchObject({ problem: { code: 'torque/nut-factor-not-a-range' } })
  })

  it('takes newton metres and newtons, not one for the other', () => {
    // @ts-expect-error a torque is no load
    nutTorque({ ...nuts, glandLoad: newtonMetres(5) })
    // @ts-expect-error a bare number is no torque
    torqueSteps(50, usualTorqueShares)
  })
})
