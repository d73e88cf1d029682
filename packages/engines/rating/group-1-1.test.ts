import { type Bar, bar, barAbsolute, type Celsius, celsius } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PressureClass, pressureClasses } from './group-1-1-table.ts'
import { ratingWarning } from './group-1-1.ts'

const warn = (pressureClass: PressureClass, temperature: number, pressure: number) => {
  const found = ratingWarning({ pressureClass, temperature: celsius(temperature), pressure: bar(pressure) })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('the rating of group 1.1', () => {
  it('class 300 at 225 °C: 43.8 + 0.5 * (41.9 - 43.8) = 42.85 bar, printed as 42.8; 21.425 bar is half of it', () => {
    const found = warn(300, 225, 21.425)
    expect(found.allowedPressure).toBeCloseTo(42.85, 9)
    expect(found.share).toBeCloseTo(0.5, 9)
    expect(found.warning).toBe(
      '21.425 bar is 50 % of the 42.8 bar the table gives for class 300, group 1.1, at 225 °C. ' +
        'A table value approves nothing: the valve plate, the design code and qualified persons decide.',
    )
  })

  it('says above when it is above, and approves nothing either way', () => {
    expect(warn(150, 200, 13.9)).toMatchObject({ exceeded: true })
    expect(warn(150, 200, 13.9).warning).toMatch(/^13\.9 bar is above the 13\.8 bar /)
    expect(warn(150, 200, 13.8)).toMatchObject({ exceeded: false })
    for (const pressure of [0, 13.8, 13.9]) expect(warn(150, 200, pressure).warning).toContain('approves nothing')
  })

  it('below 38 °C it is the 38 °C row, down to -29 °C', () => {
    expect([-29, 0, 37.9, 38].map((temperature) => warn(600, temperature, 1).allowedPressure)).toEqual([
      102.1, 102.1, 102.1, 102.1,
    ])
  })

  it('above 425 °C it advises against long use', () => {
    expect(warn(300, 425, 1).cautions).toEqual([])
    expect(warn(300, 425.1, 1).cautions).toHaveLength(1)
  })

  it.each([
    ['temperature', 150, -29.1, 1, 'rating/outside-range'],
    ['temperature', 150, 538.1, 1, 'rating/outside-range'],
    ['temperature', 150, Number.NaN, 1, 'rating/outside-range'],
    ['pressure', 150, 100, -0.1, 'rating/outside-range'],
    ['pressure', 150, 100, Number.NaN, 'rating/outside-range'],
    ['pressureClass', 800, 100, 1, 'rating/no-such-class'],
  ])('refuses a %s: class %d, %d °C, %d bar', (field, pressureClass, temperature, pressure, code) => {
    const input = {
      pressureClass: pressureClass as PressureClass,
      temperature: temperature as Celsius,
      pressure: pressure as Bar,
    }
    expect(ratingWarning(input)).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('gives finite figures or a named problem for any doubles', () => {
    fc.assert(
      fc.property(fc.constantFrom(...pressureClasses), fc.double(), fc.double(), (pressureClass, temperature, pressure) => {
        const found = ratingWarning({ pressureClass, temperature: temperature as Celsius, pressure: pressure as Bar })
        if (found.ok) expect(Number.isFinite(found.share)).toBe(true)
        else expect(found.problem.code).toMatch(/^(?:rating|number)\//)
      }),
    )
  })

  it('falls with temperature and rises with class', () => {
    const temperature = fc.double({ min: -29, max: 538, noNaN: true })
    fc.assert(
      fc.property(temperature, temperature, (one, other) => {
        const [cold, hot] = one < other ? [one, other] : [other, one]
        for (const pressureClass of pressureClasses) {
          expect(warn(pressureClass, hot, 1).allowedPressure).toBeLessThanOrEqual(
            warn(pressureClass, cold, 1).allowedPressure + 1e-9,
          )
        }
        const allowed = pressureClasses.map((pressureClass) => warn(pressureClass, one, 1).allowedPressure)
        expect(allowed.toSorted((a, b) => a - b)).toEqual(allowed)
      }),
    )
  })

  it('takes a gauge pressure, not a bare number or an absolute one', () => {
    // @ts-expect-error a bare number has no unit
    ratingWarning({ pressureClass: 150, temperature: celsius(20), pressure: 10 })
    // @ts-expect-error the table is above atmosphere
    ratingWarning({ pressureClass: 150, temperature: celsius(20), pressure: barAbsolute(10) })
  })
})
