import { millilitres, type Millilitre, mm } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dropVolumes, litresOfDrops } from './drops.ts'

describe('drops', () => {
  it('come to 20 * 1440 * 0.25 / 1000 = 7.2 L a day, 2628 L and 2.628 m³ a year', () => {
    expect(litresOfDrops({ dropsPerMinute: 20, dropVolume: millilitres(0.25) })).toEqual({
      ok: true,
      drop: 'quarter of a millilitre',
      perDay: 7.2,
      perYear: 2628,
      cubicMetresPerYear: 2.628,
    })
  })

  it('say which published drop was taken, or that the plant set its own', () => {
    const nameOf = (dropVolume: Millilitre) => {
      const found = litresOfDrops({ dropsPerMinute: 1, dropVolume })
      return found.ok ? found.drop : found.problem.code
    }
    expect(dropVolumes.map(({ volume }) => nameOf(volume))).toEqual(dropVolumes.map(({ name }) => name))
    expect(nameOf(millilitres(0.1))).toBe('as set')
  })

  it('none at all are no loss, not a problem', () => {
    expect(litresOfDrops({ dropsPerMinute: 0, dropVolume: millilitres(0.25) })).toMatchObject({ ok: true, perDay: 0 })
  })

  it.each([
    ['dropsPerMinute', -1, 0.25, 'number/negative'],
    ['dropsPerMinute', Number.NaN, 0.25, 'number/negative'],
    ['dropsPerMinute', Infinity, 0.25, 'number/out-of-range'],
    ['dropVolume', 1, 0, 'number/not-positive'],
    ['dropVolume', 1, Number.NaN, 'number/not-positive'],
  ])('refuse %s of %d and %d with the code', (field, dropsPerMinute, dropVolume, code) => {
    expect(litresOfDrops({ dropsPerMinute, dropVolume: dropVolume as Millilitre })).toMatchObject({
      ok: false,
      problem: { code, field },
    })
  })

  it('twice the drops are twice the litres', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), (count) => {
        const litres = (dropsPerMinute: number) => {
          const found = litresOfDrops({ dropsPerMinute, dropVolume: millilitres(0.05) })
          return found.ok ? found.perDay : Number.NaN
        }
        expect(litres(2 * count)).toBeCloseTo(2 * litres(count), 9)
      }),
    )
  })

  it('take a volume, not a bare number or a length', () => {
    // @ts-expect-error a bare number has no unit
    litresOfDrops({ dropsPerMinute: 1, dropVolume: 0.25 })
    // @ts-expect-error a length is not a volume
    litresOfDrops({ dropsPerMinute: 1, dropVolume: mm(0.25) })
  })
})
