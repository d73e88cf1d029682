import { readFileSync } from 'node:fs'
import path from 'node:path'
import { studThreads, travelOfTurns } from '@glandkeeper/engines/threads/stud-threads'
import { turns } from '@glandkeeper/units/quantity'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'

/**
 * Published pitches. Read in public tabulations of:
 * metric coarse: ISO 4032 and ISO 4014 · UNC, UNF: ASME B18.2.2, pitch column · BSW, BSF: BS 84:2007.
 * Two UNF sizes are from memory and marked so in the file.
 */
const published = parse(readFileSync(path.join(import.meta.dirname, 'values/threads.csv')), { columns: true }) as {
  thread: string
  nominal_mm: string
  pitch_mm: string
  threads_per_inch: string
  mark: string
}[]

describe('stud threads against the published tables', () => {
  it('are the published ones, no more and no fewer', () => {
    expect(studThreads.map((thread) => thread.designation).toSorted()).toEqual(published.map((row) => row.thread).toSorted())
    expect(published.filter((row) => row.mark === 'memory').map((row) => row.thread)).toEqual(['1-1/8-12 UNF', '1-3/8-12 UNF'])
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
  })
})
