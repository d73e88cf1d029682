import { readFileSync } from 'node:fs'
import path from 'node:path'
import { mistakableThreads } from '@glandkeeper/engines/threads/mistakable-threads'
import { spannersOf } from '@glandkeeper/engines/threads/nut-spanner'
import { stressArea } from '@glandkeeper/engines/threads/stress-area'
import { studThreads, travelOfTurns } from '@glandkeeper/engines/threads/stud-threads'
import { travelOfFlats, turnsOfTravel } from '@glandkeeper/engines/threads/turns-and-travel'
import { mm, turns } from '@glandkeeper/units/quantity'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'

/**
 * Published pitches, widths across flats and stress areas, read in public tabulations of:
 * metric coarse: ISO 4032 and ISO 4014 · metric fine: ISO 262 · UNC, UNF: ASME B18.2.2 and B1.1 · BSW, BSF: BS 84:2007.
 * Widths: ISO 272 before and after 1982 (mm) · BS 1768 plain and ASME B18.2.2 heavy (in) · BS 84 large and BS 1083 small (in).
 * Areas: EN ISO 898-1 (mm²), the fine ones from memory · ASME B1.1 (in²).
 */
const published = parse(readFileSync(path.join(import.meta.dirname, 'values/threads.csv')), { columns: true }) as {
  thread: string
  nominal_mm: string
  pitch_mm: string
  threads_per_inch: string
  mark: string
  flats: string
  flats_other: string
  area: string
  area_mark: string
}[]

interface AreaCase {
  readonly id: string
  readonly inputs: Readonly<Record<string, number>>
  readonly output: Readonly<Record<string, number>>
}
const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/load.json'), 'utf8')) as {
  readonly stressArea: readonly AreaCase[]
  readonly whitworthDiameters: { readonly diameters: Readonly<Record<string, readonly [pitch: number, minor: number]>> }
}

describe('stud threads against the published tables', () => {
  it('are the published ones, no more and no fewer', () => {
    expect(studThreads.map((thread) => thread.designation).toSorted()).toEqual(published.map((row) => row.thread).toSorted())
    expect(published.filter((row) => row.mark !== 'read')).toEqual([])
  })

  it.each(published)('$thread', ({ thread, nominal_mm, pitch_mm, threads_per_inch }) => {
    const ours = studThreads.find((known) => known.designation === thread)!
    const pitch = threads_per_inch === '' ? Number(pitch_mm) : 25.4 / Number(threads_per_inch)
    expect(ours.pitch).toBeCloseTo(pitch, 12)
    expect(ours.nominalDiameter).toBeCloseTo(Number(nominal_mm), 4)
  })

  it('give the travel of a flat, a quarter and a half turn as worked out from those pitches', () => {
    const travel = (thread: string, taken: number) => {
      const result = travelOfTurns(thread, turns(taken))
      return result.ok ? Number(result.travel.toFixed(4)) : null
    }
    expect([travel('M8', 1 / 6), travel('M10', 0.25), travel('M12', 1 / 12), travel('1/2-13 UNC', 0.5)]).toEqual([
      0.2083, 0.375, 0.1458, 0.9769,
    ])
    const flat = travelOfFlats('M8', 1)
    expect(flat.ok && Number(flat.travel.toFixed(4))).toBe(0.2083)
    expect(turnsOfTravel('M10', mm(0.375))).toMatchObject({ turns: 0.25, flats: 1.5 })
  })
})

describe('spanners against the published widths across flats', () => {
  /** Copies of the Whitworth tables differ by three thousandths of an inch: 2.41 and 2.413. */
  const within = (thread: string) => (/BS[WF]/.test(thread) ? 0.0031 * 25.4 : 1e-9)
  const unit = (thread: string) => (thread.startsWith('M') ? 1 : 25.4)

  it.each(published.filter((row) => row.flats !== '' || row.flats_other !== ''))('$thread', ({ thread, flats, flats_other }) => {
    const found = spannersOf(thread)
    const ours = found.ok ? found.spanners.map((spanner) => spanner.acrossFlats) : []
    const widths = [flats, flats_other].filter((width) => width !== '').map((width) => Number(width) * unit(thread))
    for (const width of widths)
      expect(Math.min(...ours.map((known) => Math.abs(known - width))), `${width}`).toBeLessThanOrEqual(within(thread))
    if (flats !== '') expect(ours).toHaveLength(widths.length)
  })
})

describe('stress areas against the published tables', () => {
  it.each(published.filter((row) => row.area_mark === 'read'))('$thread: $area', ({ thread, area }) => {
    expectPrinted(thread, area)
  })

  it.each(published.filter((row) => row.area_mark === 'memory'))('$thread: $area, table from memory', ({ thread, area }) => {
    expectPrinted(thread, area)
  })

  it.each(values.stressArea)('$id, worked out from the formula', ({ inputs, output }) => {
    const inInches = 'd_in' in inputs
    const ours = studThreads.find(({ nominalDiameter, pitch, series }) =>
      inInches
        ? series.startsWith('UN') && near(nominalDiameter, inputs['d_in']! * 25.4) && near(pitch, 25.4 / inputs['tpi']!)
        : series === 'M' && nominalDiameter === inputs['d'] && pitch === inputs['P'],
    )!
    const found = stressArea(ours.designation)
    const area = found.ok ? found.area : 0
    if (!inInches) {
      expect(area).toBeCloseTo(output['As_formula']!, 3)
      expect(Math.abs(area / output['As_table']! - 1)).toBeLessThan(0.006)
    } else {
      expect(Math.abs(area / 25.4 ** 2 - output['As_in2']!)).toBeLessThan(1.05e-5)
      expect(ours.pitch).toBeCloseTo(output['travel_mm_per_turn']!, 4)
    }
  })

  it.each(Object.entries(values.whitworthDiameters.diameters))(
    '%s lies at the mean of the published pitch and minor diameters %o',
    (thread, [pitchDiameter, minorDiameter]) => {
      const found = stressArea(thread)
      const mean = (pitchDiameter + minorDiameter) / 2
      // Diameters are printed to 0.0001 in: the area follows to four of its figures.
      expect(found.ok && found.area / 25.4 ** 2 / ((Math.PI / 4) * mean ** 2)).toBeCloseTo(1, 3)
    },
  )
})

it('BSW and UNC of one size and count start on each other in the published tables; half an inch, 12 against 13, binds', () => {
  for (const { thread, nominal_mm, threads_per_inch } of published.filter((row) => row.thread.endsWith('BSW'))) {
    const unified = published.find((row) => row.thread.endsWith('UNC') && row.nominal_mm === nominal_mm)
    const found = mistakableThreads(thread)
    const likeness = found.ok ? found.threads.find((other) => other.designation === unified?.thread)?.likeness : null
    const expected = unified?.threads_per_inch === threads_per_inch ? 'runs on' : 'starts and binds'
    expect(likeness, thread).toBe(unified ? expected : undefined)
  }
})

/** Metric tables round to three figures; the inch tables cut off here and round there: one unit of the last figure. */
function expectPrinted(thread: string, printed: string): void {
  const found = stressArea(thread)
  const area = found.ok ? found.area / (thread.startsWith('M') ? 1 : 25.4 ** 2) : 0
  const decimals = printed.split('.')[1]?.length ?? 0
  if (thread.startsWith('M')) expect(area.toFixed(decimals)).toBe(printed)
  else expect(Math.abs(area - Number(printed))).toBeLessThan(10 ** -decimals)
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) < 1e-9
}
