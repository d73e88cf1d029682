import { mm, newtonMetres, newtons, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { packingShare, rimPull, usualPackingShareLimit, usualRimPullLimit } from './drive-limits.ts'

describe('rim pull', () => {
  it('of 45 N·m at a 250 mm wheel is 360 N, 180 N each hand: 45 / 0.125', () => {
    const wheel = { torque: newtonMetres(45), wheelDiameter: mm(250), rimPullLimit: usualRimPullLimit }
    expect(rimPull(wheel)).toEqual({ ok: true, rimPull: 360, pullOfEachHand: 180, beyondLimit: false })
    expect(rimPull({ ...wheel, torque: newtonMetres(45.1) })).toMatchObject({ beyondLimit: true })
    expect(rimPull({ ...wheel, wheelDiameter: mm(500) })).toMatchObject({ rimPull: 180 })
  })

  it.each([
    [{ torque: newtonMetres(-1) }, 'number/negative', 'torque'],
    [{ wheelDiameter: mm(0) }, 'number/not-positive', 'wheelDiameter'],
    [{ rimPullLimit: newtons(0) }, 'number/not-positive', 'rimPullLimit'],
    [{ torque: newtonMetres(1e308) }, 'number/out-of-range', 'torque'],
  ])('refuses %o', (wrong, code, field) => {
    const wheel = { torque: newtonMetres(45), wheelDiameter: mm(250), rimPullLimit: newtons(360), ...wrong }
    expect(rimPull(wheel)).toMatchObject({ ok: false, problem: { code, field } })
  })
})

describe('what packing takes of a drive', () => {
  const share = (packing: number) =>
    packingShare({ packingEffort: newtons(packing), availableEffort: newtons(8000), shareLimit: usualPackingShareLimit })

  it('of 8 kN is within the limit up to 2.4 kN and more than there is above 8 kN', () => {
    expect(share(2400)).toMatchObject({ share: expect.closeTo(0.3, 12) as number, standing: 'within limit' })
    expect(share(2401)).toMatchObject({ standing: 'above limit' })
    expect(share(8000)).toMatchObject({ share: 1, standing: 'above limit' })
    expect(share(8001)).toMatchObject({ standing: 'more than there is' })
  })

  it('is refused for a drive that has nothing', () => {
    const nothing = { packingEffort: newtonMetres(1), availableEffort: newtonMetres(0), shareLimit: ratio(0.3) }
    expect(packingShare(nothing)).toMatchObject({ problem: { code: 'number/not-positive', field: 'availableEffort' } })
  })

  it('compares thrust with thrust and torque with torque', () => {
    // @ts-expect-error torque is no share of thrust
    packingShare({ packingEffort: newtonMetres(1), availableEffort: newtons(8000), shareLimit: ratio(0.3) })
    // @ts-expect-error a bare number is no effort
    packingShare({ packingEffort: 5, availableEffort: newtons(8000), shareLimit: ratio(0.3) })
  })
})
