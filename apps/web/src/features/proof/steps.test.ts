import { CutCard } from '@glandkeeper/contract/cut-cards'
import { expect, test } from 'vitest'
import { type CardForProof, planOf } from './plan.ts'
import { newDraft, type ProofDraft } from './proof-draft.ts'
import { isDone, leftOut, nextAct, ticked, withOneMoreRing } from './steps.ts'

/** What a card of the test's valve says: three rings, joints a third round, two torques. */
const aCard: CardForProof = CutCard.pick({
  rings: true,
  joints: true,
  steps: true,
  family: true,
  form: true,
  cord: true,
  cut: true,
}).parse({
  rings: { count: 3, says: [] },
  joints: [
    { ring: 1, angle: 0, clock: '12' },
    { ring: 2, angle: 120, clock: '4' },
    { ring: 3, angle: 240, clock: '8' },
  ],
  steps: [
    { torque: null, says: 'each ring pressed home by itself' },
    { torque: 4, says: 'stem through its travel twice' },
    { torque: 13.2, says: 'read both gaps' },
  ],
  family: 'graphite braid',
  form: 'braided',
  cord: { space: 8.5, designation: '8.5 mm', size: 8.5, rollTo: null, says: '' },
  cut: { angle: 45, length: 114.7, mandrel: 28, wraps: 4 },
})
const blank = newDraft(new Date('2026-05-04T10:00:00Z'))
const draftOf = (change: Partial<ProofDraft> = {}): ProofDraft => ({ ...blank, ...change })
const pressedOn = (draft: ProofDraft, change: Partial<ProofDraft>): ProofDraft => ({ ...draft, ...change })
const plan = planOf(aCard, blank)

test('the big button ticks ring after ring with its joint, then the torques, and waits where something is to be said', () => {
  let draft = draftOf()
  const pressed: string[] = []
  for (let press = 0; press < 20; press++) {
    const act = nextAct(draft, plan, null)
    if (!act) break
    pressed.push(act.words)
    draft = pressedOn(draft, act.change)
  }
  expect(pressed).toEqual([
    'Ring 1 is in',
    'Ring 2 is in',
    'Ring 3 is in',
    'Next: load it',
    '4.0 N·m done',
    '13.2 N·m done',
    'Next: try the wheel',
  ])
  expect(draft.at).toBe('wheel')
  expect(nextAct({ ...draft, wheel: 'overran' }, plan, null)?.change).toEqual({ at: 'gap' })
  expect(nextAct({ ...draft, at: 'gap', gapLeft: 8 }, plan, null)).toBeNull()
  expect(nextAct({ ...draft, at: 'gap', gapLeft: 8, gapRight: 0 }, plan, null)?.change).toEqual({ at: 'save' })
  expect(nextAct(draftOf(), plan, null)?.small).toBe('joint at 12, seated and tamped by itself')
})

test('one more ring goes on where the joints left off, and what was loaded and read is done again', () => {
  const before = draftOf({ at: 'gap', seated: 3, loaded: 2, wheel: 'no overrun', stem: 'free', gapLeft: 3, gapRight: 3 })
  const after = withOneMoreRing(before, 3)
  expect(after).toEqual({ ...draftOf({ at: 'rings', rings: 4, seated: 3 }), begunAt: before.begunAt })
  const longer = planOf(aCard, after)
  expect(longer.joints.map(({ clock }) => clock)).toEqual(['12', '4', '8', '12'])
  expect(isDone('rings', after, longer)).toBe(false)
  expect(nextAct(after, longer, null)?.words).toBe('Ring 4 is in')
})

test('where the gap asks for one more ring that is the next act, and a gap that is good goes on', () => {
  const short = draftOf({ at: 'gap', seated: 3, loaded: 2, wheel: 'no overrun', gapLeft: 3, gapRight: 3 })
  expect(nextAct(short, plan, 'one more ring')).toMatchObject({
    words: 'One more ring',
    change: { at: 'rings', rings: 4, seated: 3 },
  })
  expect(nextAct({ ...short, gapRight: null }, plan, 'one more ring')).toBeNull()
  expect(nextAct(short, plan, 'no room for another ring')?.change).toEqual({ at: 'save' })
  expect(nextAct(short, plan, 'good')?.change).toEqual({ at: 'save' })
})

test('without a card the steps work with the number of rings that is typed', () => {
  const unknown = planOf(null, blank)
  expect(unknown).toMatchObject({ rings: null, joints: [], family: 'unknown', section: null, cut: 'unknown' })
  expect(nextAct(draftOf(), unknown, null)).toBeNull()
  const typed = planOf(null, draftOf({ rings: 4 }))
  expect(typed.joints.map(({ clock }) => clock)).toEqual(['12', '3', '6', '9'])
  expect(typed.jointsAreUsual).toBe(true)
  expect(nextAct(draftOf({ rings: 4, at: 'load' }), typed, null)?.words).toBe('Loaded')
})

test('a ring is ticked after the one below it, and is not out from under another', () => {
  expect([ticked(2, 3), ticked(2, 5), ticked(3, 3), ticked(3, 1)]).toEqual([3, 2, 2, 0])
})

test('what was left out is asked about before it is saved, and nothing when all is done', () => {
  expect(leftOut(draftOf({ seated: 3, loaded: 2, wheel: 'no overrun', gapLeft: 8, gapRight: 8 }), plan)).toEqual([])
  expect(leftOut(draftOf({ seated: 2 }), plan)).toEqual([
    '2 of 3 rings are ticked: the entry will say 2.',
    '0 of 2 load steps are ticked: the entry will not say it was loaded in steps.',
    'The wheel was not tried: the entry will not say it is proved.',
    'No gap was read: what travel is left will not be known.',
  ])
})

test('one more ring adds to what was said to be taken, and a torque before it counts no more', () => {
  const reel = { lotId: '01890000-0000-7000-8000-0000000000aa', says: 'R-12', unit: 'm' as const, perRing: 0.1147 }
  expect(withOneMoreRing(draftOf({ reel, taken: 0.5, torque: 13 }), 3)).toMatchObject({ taken: 0.61, torque: null })
  expect(withOneMoreRing(draftOf({ reel }), 3).taken).toBeNull()
  expect(withOneMoreRing(draftOf({ reel: { ...reel, perRing: null }, taken: 0.5 }), 3).taken).toBe(0.5)
})

test('a reel without an amount is told before it is saved', () => {
  const reel = { lotId: '01890000-0000-7000-8000-0000000000aa', says: 'R-12', unit: 'm' as const, perRing: null }
  const says = 'How much was taken from the reel is not said: the store will not know of it.'
  expect(leftOut(draftOf({ reel }), plan)).toContain(says)
  expect(leftOut(draftOf({ reel, taken: 0.4 }), plan)).not.toContain(says)
  expect(leftOut(draftOf({ reel: { ...reel, perRing: 0.1 } }), plan)).not.toContain(says)
})
