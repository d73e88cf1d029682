import { expect, it } from 'vitest'
import { whyInRow } from './why-in-row.ts'

type Stands = Parameters<typeof whyInRow>[0]
const stands = (overrides: Partial<Omit<Stands, 'reserve'>> & { reserve?: number }) =>
  ({ withoutForecast: null, reserve: 3, findings: [], gapIsInferred: false, ...overrides }) as Stands

it.each([
  [0.8, 'M12', 'less than half a turn left'],
  [0.875, 'M12', 'half a turn left'],
  [1.75, 'M12', 'one turn left'],
  [3, 'M12', '1.5 turns left'],
  [3, null, 'stud thread not known'],
  [3, 'M13', 'stud thread not known'],
])('%s mm on %s: %s', (reserve, thread, said) => {
  expect(whyInRow(stands({ reserve }), thread)).toBe(said)
})

it('adds what stands out, or that the gap was not read', () => {
  const findings = [{ code: 'reserve/follower-tilts', detail: 'follower tilts 0.9 mm' }]
  expect(whyInRow(stands({ findings, gapIsInferred: true }), 'M12')).toBe('1.5 turns left; follower tilts 0.9 mm')
  expect(whyInRow(stands({ gapIsInferred: true }), 'M12')).toBe('1.5 turns left; worked out from turns, measure')
})

it('of a spent gland is the whole reason', () => {
  expect(whyInRow(stands({ reserve: -0.2, withoutForecast: 'no travel left since 3 May' }), 'M12')).toBe(
    'no travel left since 3 May',
  )
})
