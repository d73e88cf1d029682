import { describe, expect, it } from 'vitest'
import { matchVisits, withoutDone, withoutSpent } from './before-and-pins.ts'
import type { WindowOfVisit } from './windows-of-valve.ts'

const window = (earliest: number, due: number, latest: number): WindowOfVisit => ({
  earliest,
  due,
  latest,
  kind: 'routine',
  cause: 'leak interval',
  minutes: 5,
})
const windows = [window(2, 3, 4), window(9, 10, 11)]
const before = (...weeks: number[]) => weeks.map((week) => ({ week, crewId: 'A' }))
const madeAt = new Date('2026-05-04T09:00:00Z')
const pins = (...weeks: number[]) => weeks.map((week) => ({ week, crewId: null, madeAt }))
const weeksBefore = (...weeks: number[]) => matchVisits(windows, before(...weeks), []).map((visit) => visit.before?.week ?? null)

describe('a visit and the one of the plan before', () => {
  it.each([
    ['by their windows', [4, 9], [4, 9]],
    ['by the nearer due week where both hold none', [6, 12], [6, 12]],
    ['one alone, to the window it lies in', [11], [null, 11]],
    ['and no week twice', [3], [3, null]],
    ['and what is over stays over', [3, 4, 10], [3, 10]],
  ])('belong together %s', (_, weeks, expected) => expect(weeksBefore(...weeks)).toEqual(expected))
})

it('a pin goes to the visit due nearest, also outside every window', () => {
  expect(matchVisits(windows, [], pins(6)).map(({ pin }) => pin?.week ?? null)).toEqual([6, null])
})

it('a visit of the week that has begun is done when somebody was there in it, and not before', () => {
  const begins = new Date('2026-05-03T23:00:00Z')
  expect(withoutDone(before(0, 5), new Date('2026-05-04T08:00:00Z'), begins)).toEqual(before(5))
  expect(withoutDone(before(0, 5), new Date('2026-05-02T08:00:00Z'), begins)).toEqual(before(0, 5))
  expect(withoutDone(before(0, 5), null, begins)).toEqual(before(0, 5))
})

it('a pin has served when somebody was there since and no window holds its week', () => {
  const later = new Date(madeAt.getTime() + 1000)
  expect(withoutSpent(pins(0, 3), later, windows)).toEqual(pins(3))
  expect(withoutSpent(pins(0, 3), new Date(madeAt.getTime() - 1000), windows)).toEqual(pins(0, 3))
  expect(withoutSpent(pins(0), null, windows)).toEqual(pins(0))
})
