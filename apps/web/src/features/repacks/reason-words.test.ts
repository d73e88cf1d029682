import { type RepackSlot } from '@glandkeeper/contract/repack-plans'
import { repackReasons } from '@glandkeeper/contract/planned-repacks'
import { describe, expect, it } from 'vitest'
import { boundaryInWords, pinInWords, reasonInWords, runnerUpInWords, runsOutInWords } from './reason-words.ts'

const stop = { slotId: 'outage:a', kind: 'outage', name: 'Summer stop' } as unknown as RepackSlot
const plain = (words: string) => words.replaceAll('\u00a0', ' ')

describe('why a valve is in its slot', () => {
  it.each(repackReasons)('%s is said in a sentence of its own', (reason) => {
    const words = reasonInWords({ reason, blockedBy: null, pin: null })
    expect(words).toMatch(/^[A-Z].*\.$/)
    const others = repackReasons.filter((other) => other !== reason)
    expect(others.map((other) => reasonInWords({ reason: other, blockedBy: null, pin: null }))).not.toContain(words)
  })

  it('names the trade whose hours ran out, or the item of the store', () => {
    const full = { reason: 'a cheaper slot has no hours left', blockedBy: 'scaffolding', pin: null } as const
    expect(reasonInWords(full)).toBe('A cheaper slot has not enough hours of scaffolding left.')
    const late = { reason: 'cord or parts come later', blockedBy: 'PTFE braid 8 mm', pin: null } as const
    expect(reasonInWords(late)).toBe('There is not enough PTFE braid 8 mm in the store before a cheaper slot.')
  })

  it('names who pinned it here, and nobody where the pin keeps it out of another slot', () => {
    const pin = { kind: 'in', slotId: 'outage:a', by: 'E. Marlow' } as const
    expect(reasonInWords({ reason: 'pinned', blockedBy: null, pin })).toBe('Pinned here by E. Marlow.')
    expect(reasonInWords({ reason: 'pinned', blockedBy: null, pin: { ...pin, kind: 'not in' } })).not.toContain('Marlow')
  })
})

describe('the next best slot', () => {
  const costs = 'costs least of all its slots'

  it.each([
    ['outage:a', 0.416, 'chance', 'Next best: Summer stop, 0.42 points more.'],
    [null, 1, 'chance', 'Next best: to wait, 1.00 point more.'],
    ['outage:a', 1234.4, 'money', 'Next best: Summer stop, 1,234 more.'],
    ['outage:a', -0.2, 'chance', 'Next best: Summer stop, 0.20 points less.'],
    ['outage:a', 0.001, 'chance', 'Next best: Summer stop, as good.'],
  ] as const)('%s for %d of %s', (slotId, extraCost, objective, says) => {
    const repack = { reason: costs, runnerUp: { slotId, extraCost } } as Parameters<typeof runnerUpInWords>[0]
    expect(plain(runnerUpInWords(repack, [stop], objective))).toBe(says)
  })

  it('is said to be none where there is none, and not sought for what a hand has put there', () => {
    expect(runnerUpInWords({ reason: costs, runnerUp: null }, [stop], 'chance')).toBe('There is no other slot it could be in.')
    expect(runnerUpInWords({ reason: 'pinned', runnerUp: null }, [stop], 'chance')).toBe('')
  })
})

describe('a pin', () => {
  it('is said with whose it is and what it does', () => {
    expect(pinInWords({ kind: 'in', slotId: 'outage:a', by: 'E. Marlow' }, [stop])).toBe('E. Marlow pinned it to Summer stop')
    expect(pinInWords({ kind: 'not in', slotId: 'outage:a', by: 'E. Marlow' }, [stop])).toBe(
      'E. Marlow keeps it out of Summer stop',
    )
  })
})

describe('the day a valve runs out', () => {
  it.each([
    [null, 'no day within twenty years'],
    ['2026-05-04', 'likely on 4 May 2026'],
    ['2026-05-03', 'likely since 3 May 2026'],
  ])('%s, seen on 4 May 2026', (day, says) => expect(runsOutInWords(day, '2026-05-04')).toBe(says))
})

describe('a boundary', () => {
  it('is said with when it can be isolated', () => {
    expect(boundaryInWords({ boundary: '', isolatesOnLine: true })).toBe('Isolated alone, while the plant runs')
    expect(boundaryInWords({ boundary: 'BH-12', isolatesOnLine: false })).toBe('Boundary BH-12, in an outage only')
  })
})
