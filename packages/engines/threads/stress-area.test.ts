import { describe, expect, it } from 'vitest'
import { stressArea } from './stress-area.ts'
import { studThreads } from './stud-threads.ts'

const areaOf = (designation: string) => {
  const found = stressArea(designation)
  return found.ok ? found.area : null
}

describe('stress area', () => {
  it('of M12 is 84.27 mm²: π/4 · (12 - 0.9382 · 1.75)² = π/4 · 10.35815²', () => {
    expect(areaOf('M12')).toBeCloseTo((Math.PI / 4) * 10.35815 ** 2, 9)
  })

  it('of 1/2-12 BSW lies at the mean of pitch and minor diameter: 0.5 - 0.9604905 / 12 = 0.41996 in', () => {
    expect(areaOf('1/2-12 BSW')! / 25.4 ** 2).toBeCloseTo((Math.PI / 4) * 0.41995912 ** 2, 7)
    expect(stressArea('1/2-12 BSW')).toMatchObject({ method: 'mean of pitch and minor diameter' })
  })

  it('is smaller than the nominal circle and larger than the core of every thread', () => {
    for (const { designation, nominalDiameter, pitch } of studThreads) {
      expect(areaOf(designation)).toBeLessThan((Math.PI / 4) * nominalDiameter ** 2)
      expect(areaOf(designation)).toBeGreaterThan((Math.PI / 4) * (nominalDiameter - 1.3 * pitch) ** 2)
    }
  })

  it('is larger with the finer of two pitches at one diameter', () => {
    for (const [fine, coarse] of [
      ['M12x1.25', 'M12x1.5'],
      ['M12x1.5', 'M12'],
      ['1/2-20 UNF', '1/2-13 UNC'],
      ['1/2-16 BSF', '1/2-12 BSW'],
    ] as const)
      expect(areaOf(fine)).toBeGreaterThan(areaOf(coarse)!)
  })

  it('of an unknown thread is refused', () => {
    expect(stressArea('M12x1.1')).toMatchObject({ ok: false, problem: { code: 'thread/unknown', field: 'designation' } })
  })
})
