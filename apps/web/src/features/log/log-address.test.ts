import { expect, test } from 'vitest'
import { daysAreTurned, filtersOf, isFiltered, logViewOf, withLogView } from './log-address.ts'

const view = (text: string) => logViewOf(new URLSearchParams(text))
const PERSON = '01890000-0000-7000-8000-0000000000aa'
const whole = view(`subject=days+off&person=${PERSON}&from=2026-01-01&to=2026-03-31&find=nose+length&skip=100`)

test('a view of the log comes back from its address as it was written', () => {
  expect(whole).toEqual({
    subject: 'days off',
    person: PERSON,
    from: '2026-01-01',
    to: '2026-03-31',
    find: 'nose length',
    skip: 100,
  })
  expect(logViewOf(new URLSearchParams(withLogView(whole, { skip: 100 })))).toEqual(whole)
  expect(withLogView(view(''), {})).toBe('?')
  expect(withLogView(view(''), { skip: 50 })).toBe('?skip=50')
})

test('what is no filter is left out of a view', () => {
  expect(view(`subject=weather&person=me&from=2026-02-30&to=soon&find=+&skip=-1`)).toEqual(view(''))
  expect(view(`find=${'x'.repeat(80)}`).find).toHaveLength(60)
})

test('another filter begins the list anew, another page keeps the filters', () => {
  expect(logViewOf(new URLSearchParams(withLogView(whole, { subject: null })))).toEqual({ ...whole, subject: null, skip: 0 })
  expect(logViewOf(new URLSearchParams(withLogView(whole, { skip: 150 })))).toEqual({ ...whole, skip: 150 })
})

test('the server is asked for the filters that are set, and a page is no filter', () => {
  expect(filtersOf(view('subject=valve&skip=50'))).toEqual({ subject: 'valve' })
  expect(Object.keys(filtersOf(whole))).toEqual(['subject', 'person', 'from', 'to', 'find'])
  expect([isFiltered(view('skip=50')), isFiltered(view('to=2026-03-31'))]).toEqual([false, true])
})

test('days are the wrong way round when the last comes before the first', () => {
  expect(daysAreTurned({ from: '2026-03-02', to: '2026-03-01' })).toBe(true)
  expect(daysAreTurned({ from: '2026-03-02', to: '2026-03-02' })).toBe(false)
  expect(daysAreTurned({ from: '2026-03-02', to: '' })).toBe(false)
})
