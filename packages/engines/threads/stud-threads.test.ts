import { turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findThread, studThreads, travelOfTurns } from './stud-threads.ts'

describe('a thread', () => {
  it('is found whatever its capitals and spaces, and with its coarse pitch written out', () => {
    for (const written of ['M12', 'm12', ' M 12 ', 'M12x1.75', 'm12 × 1.75'])
      expect(findThread(written)).toMatchObject({ ok: true, thread: { designation: 'M12' } })
    expect(findThread('1/2-13unc')).toMatchObject({ ok: true, thread: { pitch: 25.4 / 13 } })
  })

  it('of a fine pitch is its own thread, however the pitch is written', () => {
    for (const written of ['M12x1.25', 'm12 × 1.25', 'M 12 X 1.250'])
      expect(findThread(written)).toMatchObject({ ok: true, thread: { designation: 'M12x1.25', pitch: 1.25, series: 'MF' } })
    expect(findThread('M10x1.0')).toMatchObject({ ok: true, thread: { designation: 'M10x1' } })
  })

  it('of a pitch that is not listed is unknown rather than taken for coarse', () => {
    for (const designation of ['M12x1.1', 'M12x', 'M13', 'M12x1.75x2', '']) {
      expect(findThread(designation)).toEqual({ ok: false, problem: { code: 'thread/unknown', designation } })
    }
  })

  it('is listed once', () => {
    const names = studThreads.map((thread) => thread.designation)
    expect(new Set(names).size).toBe(names.length)
    expect(names.length).toBe(14 + 18 + 14 + 14 + 15 + 15)
  })

  it('of half an inch differs between Whitworth and unified, which start on each other all the same', () => {
    const [whitworth, unified] = ['1/2-12 BSW', '1/2-13 UNC'].map((name) => travelOfTurns(name, turns(0.5)))
    expect(whitworth).toMatchObject({ ok: true, travel: 25.4 / 24 })
    expect(unified).toMatchObject({ ok: true, travel: 25.4 / 26 })
  })
})

describe('travel', () => {
  it('of half a turn on M12 is 0.875 mm: 0.5 x 1.75', () => {
    expect(travelOfTurns('M12', turns(0.5))).toEqual({ ok: true, travel: 0.875 })
  })

  it('grows in proportion to the turns, on every thread, and slackening is negative', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...studThreads),
        fc.double({ min: -10, max: 10, noNaN: true }),
        ({ designation, pitch }, taken) => {
          const result = travelOfTurns(designation, turns(taken))
          return result.ok && Math.abs(result.travel - taken * pitch) < 1e-12
        },
      ),
    )
  })
})
