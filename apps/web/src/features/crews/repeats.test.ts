import { describe, expect, it } from 'vitest'
import { ruleOf, waysBack, wordsOf } from './repeats.ts'

describe('how days off come back', () => {
  it.each([
    ['does not', null],
    ['every week', 'FREQ=WEEKLY'],
    ['every second week', 'FREQ=WEEKLY;INTERVAL=2'],
    ['every month on that date', 'FREQ=MONTHLY'],
    ['every year', 'FREQ=YEARLY'],
  ])('%s is %s, and back', (words, rule) => {
    expect(ruleOf(words)).toBe(rule)
    expect(wordsOf(rule)).toBe(words)
  })

  it('offers each way once, none of them first', () => {
    expect(waysBack).toEqual(['does not', 'every week', 'every second week', 'every month on that date', 'every year'])
  })
})

describe('a rule written by others', () => {
  it.each([
    ['RRULE:FREQ=YEARLY', 'every year'],
    ['freq=weekly', 'every week'],
    ['INTERVAL=2;FREQ=WEEKLY', 'every second week'],
    ['FREQ=MONTHLY;INTERVAL=1', 'every month on that date'],
  ])('%s says the same: %s', (rule, words) => expect(wordsOf(rule)).toBe(words))

  it.each([
    'FREQ=WEEKLY;INTERVAL=3',
    'FREQ=WEEKLY;BYDAY=FR',
    'FREQ=YEARLY;COUNT=4',
    'FREQ=MONTHLY;INTERVAL=2',
    'FREQ=DAILY',
    'FREQ=WEEKLY;INTERVAL=12',
  ])('%s is more than the form has words for, and stays as it is', (rule) => expect(wordsOf(rule)).toBe(rule))
})
