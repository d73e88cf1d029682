import { expect, test } from 'vitest'
import { livesViewOf, withLives } from './lives-address.ts'

const view = (text: string) => livesViewOf(new URLSearchParams(text))

test('what is compared comes back from its address as it was written', () => {
  const whole = view('service=hot+stock&heat=100+to+250+%C2%B0C')
  expect(whole).toEqual({ service: 'hot stock', heat: '100 to 250 °C' })
  expect(view(withLives(whole, {}))).toEqual(whole)
  expect(withLives(view(''), {})).toBe('?')
})

test('what is no service or heat is all of them', () => {
  expect(view('service=+&heat=warm')).toEqual({ service: null, heat: 'any' })
  expect(view(`service=${'x'.repeat(80)}`).service).toHaveLength(40)
})

test('one is changed and the other kept', () => {
  expect(view(withLives(view('service=steam'), { heat: 'above 250 °C' }))).toEqual({ service: 'steam', heat: 'above 250 °C' })
  expect(withLives(view('service=steam'), { service: null })).toBe('?')
})
