import { GlandState } from '@glandkeeper/contract/reserve'
import { expect, it } from 'vitest'
import { whyInRow } from './why-in-row.ts'

const state = (overrides: Partial<Record<keyof GlandState, unknown>>) =>
  GlandState.parse({
    gapLeft: 6,
    gapRight: 6,
    gapIsInferred: false,
    reserve: 3,
    reserveLimitedBy: 'gap',
    runsOutOn: null,
    forecast: null,
    nextLook: null,
    standing: 'watch',
    why: 'no travel left since 3 May',
    findings: [],
    packedOn: null,
    packingFamily: null,
    lastSeenAt: null,
    entryCount: 1,
    ...overrides,
  })

it.each([
  [0.8, 'M12', 'less than half a turn left'],
  [0.875, 'M12', 'half a turn left'],
  [1.75, 'M12', 'one turn left'],
  [3, 'M12', '1.5 turns left'],
  [3, null, 'stud thread not known'],
  [3, 'M13', 'stud thread not known'],
])('%s mm on %s: %s', (reserve, thread, said) => {
  expect(whyInRow(state({ reserve }), thread)).toBe(said)
})

it('adds what stands out, or that the gap was not read', () => {
  const findings = [{ code: 'reserve/follower-tilts', detail: 'follower tilts 0.9 mm' }]
  expect(whyInRow(state({ findings, gapIsInferred: true }), 'M12')).toBe('1.5 turns left; follower tilts 0.9 mm')
  expect(whyInRow(state({ gapIsInferred: true }), 'M12')).toBe('1.5 turns left; worked out from turns, measure')
})

it('of a spent gland is the whole reason', () => {
  expect(whyInRow(state({ reserve: -0.2, standing: 'spent' }), 'M12')).toBe('no travel left since 3 May')
})
