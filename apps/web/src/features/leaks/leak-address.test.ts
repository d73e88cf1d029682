import { expect, test } from 'vitest'
import { leaksWith, leakViewOf, withLeaks } from './leak-address.ts'

const view = (text: string) => leakViewOf(new URLSearchParams(text))
const OUTAGE = '01890000-0000-7000-8000-0000000000aa'
const all = `state=not+verified&area=BM&service=hot+stock&family=graphite+braid&age=1+to+2+years&month=2026-03&afterOutage=${OUTAGE}&tag=BM-3307`

test('a view of the leaks comes back from its address as it was written', () => {
  const whole = view(`${all}&order=worst+first&skip=200`)
  expect(whole).toEqual({
    filters: {
      state: 'not verified',
      area: 'BM',
      service: 'hot stock',
      family: 'graphite braid',
      age: '1 to 2 years',
      month: '2026-03',
      afterOutage: OUTAGE,
      tag: 'BM-3307',
    },
    order: 'worst first',
    skip: 200,
  })
  expect(view(withLeaks(whole, { skip: 200 }))).toEqual(whole)
  expect(withLeaks(view(''), {})).toBe('?')
})

test('what is no filter is left out of a view', () => {
  const nonsense = 'state=gone&area=b%20m&service=&age=old&month=March&afterOutage=last&tag=%3C%3E&order=best&skip=-1'
  expect(view(nonsense)).toStrictEqual({ filters: {}, order: 'newest first', skip: 0 })
})

test('another filter or order begins the list anew, another page keeps both', () => {
  const second = view('area=BM&order=worst+first&skip=100')
  expect(view(withLeaks(second, { month: '2026-03' }))).toEqual({
    filters: { area: 'BM', month: '2026-03' },
    order: 'worst first',
    skip: 0,
  })
  expect(view(withLeaks(second, { area: null })).filters).toEqual({})
  expect(view(withLeaks(second, { order: 'newest first' }))).toEqual({ ...second, order: 'newest first', skip: 0 })
  expect(view(withLeaks(second, { skip: 200 }))).toEqual({ ...second, skip: 200 })
})

test('a number of another page leads to the leaks counted for it', () => {
  expect(leaksWith({ family: 'not known' })).toBe('/leaks?family=not+known')
  expect(leaksWith({ afterOutage: OUTAGE })).toBe(`/leaks?afterOutage=${OUTAGE}`)
})
