import { readFileSync } from 'node:fs'
import path from 'node:path'
import { ratingWarning } from '@glandkeeper/engines/rating/group-1-1'
import { groupOneOne, type PressureClass, pressureClasses } from '@glandkeeper/engines/rating/group-1-1-table'
import { fahrenheitToCelsius, psiToBar } from '@glandkeeper/units/convert'
import { bar, celsius } from '@glandkeeper/units/quantity'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'

const valuesOf = (file: string) => readFileSync(path.join(import.meta.dirname, 'values', file), 'utf8')

/** ASME B16.34 and B16.5 Table 2-1.1 in public tabulations; how many agree stands beside each row. */
const published = parse(valuesOf('rating.csv'), { columns: true }) as Record<string, string>[]
const inPsi = JSON.parse(valuesOf('rating-psi.json')) as ({ F: number } & Record<'class150' | 'class300' | 'class600', number>)[]

const allowed = (pressureClass: PressureClass, temperature: number) => {
  const found = ratingWarning({ pressureClass, temperature: celsius(temperature), pressure: bar(1) })
  return found.ok ? found.allowedPressure : Number.NaN
}

describe('group 1.1 against the published tabulations', () => {
  it('has the published rows, no more and no fewer', () => {
    expect(groupOneOne.map(([temperature]) => temperature)).toEqual(published.map((row) => Number(row['temperature_c'])))
  })

  it.each(published)('$temperature_c °C ($mark)', (row) => {
    for (const pressureClass of pressureClasses) {
      expect(allowed(pressureClass, Number(row['temperature_c']))).toBe(Number(row[`class${pressureClass}_bar`]))
    }
  })

  it.each(inPsi)('$F °F of the table in psi (from memory) agrees within 1.5 % with the straight line between the rows', (row) => {
    for (const pressureClass of [150, 300, 600] as const) {
      const inBar = psiToBar(row[`class${pressureClass}`])
      expect(Math.abs(allowed(pressureClass, fahrenheitToCelsius(row.F)) / inBar - 1)).toBeLessThan(0.015)
    }
  })

  it('half-way rows, the straight line being from memory: arithmetic only', () => {
    expect(allowed(150, 75)).toBeCloseTo((19.2 + 17.7) / 2, 9)
    expect(allowed(1500, 519)).toBeCloseTo((58.8 + 29.5) / 2, 9)
  })
})
