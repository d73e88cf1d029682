import { degrees, mm, newtonMetres, newtons, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { screwTorque, stemEffort } from './stem-effort.ts'

const screw = { meanDiameter: mm(20), lead: mm(5), flankHalfAngle: degrees(15), threadFriction: ratio(0.15), collar: null }
const stem = { stemDiameter: mm(22), friction: newtons(2000), screw }
const torqueOf = (thrust: number, of = screw as Parameters<typeof screwTorque>[1]) => {
  const found = screwTorque(newtons(thrust), of)
  return found.ok ? found.torque : null
}

describe('the torque of a stem screw', () => {
  it('of 2 kN on Tr of 20 mm mean diameter, lead 5: 20 N·m · (0.07958 + 0.15529) / (1 - 0.01236) = 4.756', () => {
    const slope = 5 / (Math.PI * 20)
    const friction = 0.15 / Math.cos(Math.PI / 12)
    expect(torqueOf(2000)).toBeCloseTo((20 * (slope + friction)) / (1 - slope * friction), 12)
    expect(torqueOf(2000)).toBeCloseTo(4.756, 3)
  })

  it('without friction does the work of the lift: thrust · lead / 2π', () => {
    expect(torqueOf(2000, { ...screw, threadFriction: ratio(0) })).toBeCloseTo((2000 * 0.005) / (2 * Math.PI), 12)
  })

  it('adds the collar: 0.1 · 2 kN · 15 mm = 3 N·m', () => {
    const collar = { meanDiameter: mm(30), friction: ratio(0.1) }
    expect(torqueOf(2000, { ...screw, collar })! - torqueOf(2000)!).toBeCloseTo(3, 12)
  })

  it('is in proportion to the thrust and grows with friction and with the angle of the flanks', () => {
    const share = fc.double({ min: 0.01, max: 0.4, noNaN: true })
    fc.assert(
      fc.property(share, share, (one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)].map((mu) =>
          torqueOf(1000, { ...screw, threadFriction: ratio(mu) })!,
        )
        return low! <= high! && Math.abs(torqueOf(2000)! / torqueOf(1000)! - 2) < 1e-12
      }),
    )
    expect(torqueOf(1000)).toBeGreaterThan(torqueOf(1000, { ...screw, flankHalfAngle: degrees(0) })!)
  })

  it.each([
    [{ lead: mm(0) }, 'number/not-positive', 'lead'],
    [{ flankHalfAngle: degrees(90) }, 'stem/flank-angle', 'flankHalfAngle'],
    [{ threadFriction: ratio(-0.1) }, 'number/negative', 'threadFriction'],
    [{ threadFriction: ratio(20) }, 'stem/thread-jams', 'threadFriction'],
    [{ collar: { meanDiameter: mm(0), friction: ratio(0.1) } }, 'number/not-positive', 'collar'],
  ])('refuses %o', (wrong, code, field) => {
    expect(screwTorque(newtons(1000), { ...screw, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })
})

describe('what packing asks of the drive', () => {
  it('on a stem that turns is friction at half its diameter: 2 kN · 11 mm = 22 N·m', () => {
    expect(stemEffort({ ...stem, motion: 'turning' })).toEqual({ ok: true, thrust: 0, torque: 22 })
  })

  it('on a stem that rises is thrust, through the screw where there is one', () => {
    expect(stemEffort({ ...stem, motion: 'rising', screw: null })).toEqual({ ok: true, thrust: 2000, torque: 0 })
    expect(stemEffort({ ...stem, motion: 'rising' })).toMatchObject({ thrust: 2000, torque: torqueOf(2000) })
  })

  it('on a stem that rises and turns lies along its helix: nearly as on one that turns, when the lead is small', () => {
    const fine = stemEffort({ ...stem, motion: 'rising and turning', screw: { ...screw, lead: mm(1e-6) } })
    expect(fine).toMatchObject({ thrust: expect.closeTo(0, 3) as number, torque: expect.closeTo(22, 4) as number })
  })

  it('on a stem that rises and turns, without friction in the thread, does the work along the helix', () => {
    const found = stemEffort({ ...stem, motion: 'rising and turning', screw: { ...screw, threadFriction: ratio(0) } })
    const path = Math.hypot(Math.PI * 22, 5) / 1000
    expect(found.ok && found.torque * 2 * Math.PI).toBeCloseTo(2000 * path, 9)
  })

  it('is refused for a stem that rises and turns by no thread', () => {
    expect(stemEffort({ ...stem, motion: 'rising and turning', screw: null })).toMatchObject({
      problem: { code: 'stem/screw-missing', field: 'screw' },
    })
  })

  it('takes newtons only', () => {
    // @ts-expect-error a torque is no friction force
    stemEffort({ ...stem, motion: 'turning', friction: newtonMetres(5) })
    // @ts-expect-error a bare number is no diameter
    stemEffort({ ...stem, motion: 'turning', stemDiameter: 22 })
  })
})
