import { describe, expect, it } from 'vitest'
import { choiceOf, type EntryChoice, scopeOf, withChoice } from './evidence-address.ts'

const choice = (text: string) => choiceOf(new URLSearchParams(text))
const again = (made: EntryChoice, change: Partial<EntryChoice> = {}) => choiceOf(new URLSearchParams(withChoice(made, change)))

describe('the address of a choice of entries', () => {
  it.each(['', 'tag=BM-3307&from=2026-01-01&to=2026-03-31', 'tag=', 'area=BH&to=2026-03-31', 'area='])(
    'comes back as it was written: %s',
    (text) => expect(again(choice(text))).toEqual(choice(text)),
  )

  it('says whether a valve, an area or everything was chosen, named or not yet', () => {
    expect(['', 'tag=BM-3307', 'tag=', 'area=BH', 'area=', 'tag=BM-3307&area=BH'].map((text) => choice(text).of)).toEqual([
      'all',
      'valve',
      'valve',
      'area',
      'area',
      'valve',
    ])
  })

  it('takes the valve where an address names an area too', () => {
    expect(choice('tag=BM-3307&area=BH')).toMatchObject({ of: 'valve', tag: 'BM-3307', area: '' })
  })

  it('keeps the days for another kind of choice, and takes nothing that is no day', () => {
    const valve = choice('tag=BM-3307&from=2026-01-01&to=2026-02-30')
    expect(valve.to).toBe('')
    expect(again(valve, { of: 'all' })).toEqual({ of: 'all', tag: '', area: '', from: '2026-01-01', to: '' })
  })
})

describe('what the server is asked for', () => {
  it.each([
    ['', {}],
    ['tag=BM-3307&from=2026-01-01', { tag: 'BM-3307', from: '2026-01-01' }],
    ['area=BH&to=2026-03-31', { area: 'BH', to: '2026-03-31' }],
    ['from=2026-01-01&to=2026-01-01', { from: '2026-01-01', to: '2026-01-01' }],
  ])('is what was chosen: %s', (text, scope) => expect(scopeOf(choice(text))).toEqual({ scope }))

  it.each([
    ['tag=', /type the tag/i],
    ['tag=%3F', /letters, digits/],
    ['area=', /choose an area/i],
    ['area=boiler+house', /choose an area/i],
    ['tag=BM-3307&from=2026-02-01&to=2026-01-01', /last day comes before/],
  ])('is nothing while something is missing: %s', (text, words) => {
    const asked = scopeOf(choice(text))
    expect('missing' in asked ? asked.missing : asked).toMatch(words)
  })
})
