import { type Millimetre, mm, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { studThreads, travelOfTurns } from './stud-threads.ts'
import { travelOfFlats, turnsOfTravel } from './turns-and-travel.ts'

const anyThread = fc.constantFrom(...studThreads.map((thread) => thread.designation))

describe('turns from travel', () => {
  it('of 2.5 mm on M10 is a turn and two thirds, ten flats: 2.5 / 1.5', () => {
    const result = turnsOfTravel('M10', mm(2.5))
    expect(result).toMatchObject({
      ok: true,
      flats: expect.closeTo(10, 12) as number,
      turns: expect.closeTo(5 / 3, 12) as number,
    })
  })

  it('of a flat on M8 is 0.2083 mm: 1.25 / 6', () => {
    expect(travelOfFlats('M8', 1)).toMatchObject({ ok: true, travel: expect.closeTo(1.25 / 6, 12) as number })
  })

  it('leads back to the turns it came from, on every thread', () => {
    fc.assert(
      fc.property(anyThread, fc.double({ min: -100, max: 100, noNaN: true }), (designation, taken) => {
        const there = travelOfTurns(designation, turns(taken))
        if (!there.ok) return false
        const back = turnsOfTravel(designation, there.travel)
        const byFlats = travelOfFlats(designation, taken * 6)
        return back.ok && Math.abs(back.turns - taken) < 1e-9 && byFlats.ok && Math.abs(byFlats.travel - there.travel) < 1e-9
      }),
    )
  })

  it('is refused for a thread nobody knows', () => {
    expect(turnsOfTravel('M12x1.1', mm(1))).toMatchObject({
      ok: false,
      problem: { code: 'thread/unknown', field: 'designation' },
    })
    expect(travelOfFlats('3/8 gas', 1)).toMatchObject({ ok: false, problem: { code: 'thread/unknown' } })
  })

  it('is finite or a named problem, whatever double comes', () => {
    fc.assert(
      fc.property(anyThread, fc.double(), (designation, value) => {
        const forth = turnsOfTravel(designation, value as Millimetre)
        const back = travelOfFlats(designation, value)
        return (
          (forth.ok ? Number.isFinite(forth.turns) && Number.isFinite(forth.flats) : forth.problem.field === 'travel') &&
          (back.ok ? Number.isFinite(back.travel) : back.problem.field === 'flats')
        )
      }),
    )
    expect(turnsOfTravel('M10x1', Number.MAX_VALUE as Millimetre)).toMatchObject({ problem: { code: 'number/out-of-range' } })
    expect(travelOfFlats('M12', Number.MAX_VALUE)).toMatchObject({ ok: true })
    expect(travelOfFlats('M12', Number.NaN)).toMatchObject({ problem: { code: 'number/out-of-range' } })
  })

  it('takes millimetres only', () => {
    // @ts-expect-error a bare number is no travel
    turnsOfTravel('M12', 2)
    // @ts-expect-error turns are no travel
    turnsOfTravel('M12', turns(2))
  })
})
