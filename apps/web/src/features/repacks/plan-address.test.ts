import { describe, expect, it } from 'vitest'
import { planToShow, planViewOf, withView } from './plan-address.ts'

const address = (text: string) => planViewOf(new URLSearchParams(text))
const whole = address('plan=p&slot=fortnight:2027-06-07&skip=200&from=13&as=table')

describe('the address of a plan', () => {
  it('comes back as it was written', () => {
    expect(whole).toEqual({ planId: 'p', slot: 'fortnight:2027-06-07', skip: 200, from: 13, isTable: true })
    expect(planViewOf(new URLSearchParams(withView(whole, {})))).toEqual(whole)
    expect(withView(address(''), {})).toBe('?')
  })

  it('takes nothing that is no slot and no count', () => {
    expect(address('slot=elsewhere&skip=-3&from=1e3')).toEqual({ planId: null, slot: null, skip: 0, from: 0, isTable: false })
    expect(address('slot=none').slot).toBe('none')
  })

  it('begins a list at its top for another slot, and anew for another plan', () => {
    expect(planViewOf(new URLSearchParams(withView(whole, { slot: 'none' })))).toEqual({ ...whole, slot: 'none', skip: 0 })
    expect(planViewOf(new URLSearchParams(withView(whole, { planId: 'q' })))).toEqual({
      planId: 'q',
      slot: null,
      skip: 0,
      from: 0,
      isTable: true,
    })
    expect(planViewOf(new URLSearchParams(withView(whole, { skip: 400 }))).skip).toBe(400)
  })
})

describe('the plan to show', () => {
  const plan = (planId: string, isInUse = false, whatIf: object | null = null) => ({ planId, isInUse, whatIf })
  it.each([
    ['the one asked for', [plan('a'), plan('b', true)], 'a', 'a'],
    ['the one in use before newer ones', [plan('a'), plan('b', true)], null, 'b'],
    ['the newest that is no question', [plan('q', false, {}), plan('a'), plan('b')], null, 'a'],
    ['a question where there is nothing else', [plan('q', false, {})], null, 'q'],
  ])('is %s', (_, plans, asked, shown) => {
    expect(planToShow(plans, asked)?.planId).toBe(shown)
  })

  it('is none where there is none', () => expect(planToShow([], null)).toBeNull())
})
