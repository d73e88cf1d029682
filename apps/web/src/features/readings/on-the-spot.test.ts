import { aValveCard } from '@glandkeeper/fixtures/a-card'
import { aCorrection, aNip, aReading, aValveId } from '@glandkeeper/fixtures/a-reading'
import { expect, test } from 'vitest'
import { type Draft, emptyDraft } from './draft.ts'
import { laidOver } from './laid-over.ts'
import { findingsOnTheSpot } from './on-the-spot.ts'

const even = { gapLeft: 7.4, gapRight: 7.4, reserve: 4.4, standing: 'ample' }
const card = (state: Readonly<Record<string, unknown>> = {}, expects: { reserve: number; deviation: number } | null = null) =>
  aValveCard({ state: { ...even, ...state }, expects })
const says = (draft: Partial<Draft>, on = card()) =>
  findingsOnTheSpot({ ...emptyDraft, ...draft }, on).map((finding) => finding.says.replaceAll('\u00a0', ' '))
const read = (gapLeft: number, gapRight: number) => ({ turns: 'none', gapLeft, gapRight }) as const

test('an ordinary half turn has nothing to say', () => {
  expect(says({ stem: 'free' })).toEqual([])
  expect(says({ stem: 'firm' })).toEqual([])
})

test('a stiff or seized stem is told with what not to do', () => {
  expect(says({ stem: 'stiff' })).toEqual(['The stem is stiff.'])
  expect(findingsOnTheSpot({ ...emptyDraft, stem: 'seized' }, card())[0]?.nextStep).toContain('Do not nip it further')
})

test('a tilt beyond what two readings differ by is told, with the side that is high', () => {
  expect(says(read(7.4, 6.7))).toEqual([])
  expect(says(read(7.4, 6.4))).toEqual(['The follower tilts 1.0 mm, the left side is high.'])
})

test('a reading far off what is expected asks for a second one', () => {
  expect(says(read(6, 6), card({}, { reserve: 4.4, deviation: 0.4 }))[0]).toMatch(/^Read: 3.0 mm left. Expected: about 4.4 mm/)
  expect(says(read(6.9, 6.9), card({}, { reserve: 4.4, deviation: 0.4 }))).toEqual([])
})

test('no travel left, and less than another half turn, are told with the repack', () => {
  expect(says(read(3, 3))).toEqual(['No travel is left.'])
  expect(says({}, card({ gapLeft: 4.5, gapRight: 4.5, reserve: 1.5 }))).toEqual(['0.6 mm left: less than another half turn.'])
  expect(says(read(3.5, 3.5))).toEqual(['0.5 mm left: less than another half turn.'])
})

test('a card with what waits on the device: nips sink the follower, a reading sets it, what was taken back does nothing', () => {
  const at = (minute: number) => `2026-05-04T10:${minute}:00Z`
  const nip = aNip({ valveId: aValveId(), takenAt: at(10) })
  const reading = aReading({ valveId: aValveId(), takenAt: at(20), gapLeft: 6, gapRight: 6.2 })
  const back = aCorrection({ valveId: aValveId(), takenAt: at(30), corrects: nip.id, replacement: null })
  expect(laidOver(card(), [nip]).state).toMatchObject({
    gapLeft: 6.525,
    gapIsInferred: true,
    reserve: expect.closeTo(3.525, 9) as number,
  })
  expect(laidOver(card(), [reading, nip]).state).toMatchObject({ gapLeft: 6, gapRight: 6.2, gapIsInferred: false, reserve: 3 })
  expect(laidOver(card(), [nip, back])).toEqual(card())
})
