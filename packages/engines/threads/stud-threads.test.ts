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

  it('of a fine pitch is unknown rather than taken for coarse', () => {
    expect(findThread('M12x1.25')).toEqual({ ok: false, problem: { code: 'thread/unknown', designation: 'M12x1.25' } })
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
