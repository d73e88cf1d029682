import { expect, it } from 'vitest'
import { lossBars } from './loss-geometry.ts'

const area = (name: string, middle: number, low: number, high: number) => ({ name, kilogramsPerHour: { middle, low, high } })

it('bars and intervals of all areas stand on one scale from zero', () => {
  // From 210 to 1010 px for 20 kg/h.
  const { bars } = lossBars([area('Boiler house', 10, 5, 20), area('Steam mains', 5, 0, 5)], 1180)
  expect(bars.map(({ left, width, from, to }) => [left, width, from, to])).toEqual([
    [210, 400, 410, 1010],
    [210, 200, 210, 410],
  ])
  expect(bars.map(({ wordsX }) => wordsX)).toEqual([1020, 420])
  expect(bars.some(({ isBeyond }) => isBeyond)).toBe(false)
})

it('one interval that is very wide ends at the edge and says so', () => {
  const { bars } = lossBars([area('Boiler house', 10, 1, 900), area('Steam mains', 5, 4, 6)], 1180)
  // 25 kg/h is the most that is drawn.
  expect(bars[0]).toMatchObject({ width: 320, to: 1010, isBeyond: true })
  expect(bars[1]).toMatchObject({ width: 160, isBeyond: false })
})

it('on a phone the name stands above its bar, which has the width', () => {
  const { bars, height } = lossBars([area('Boiler house', 10, 5, 20), area('Steam mains', 5, 0, 5)], 358)
  expect(bars.map(({ left }) => left)).toEqual([0, 0])
  expect(bars.every(({ nameY, y }) => nameY < y)).toBe(true)
  expect(height).toBeGreaterThan(bars[1]?.y ?? Infinity)
})

it('areas that lose nothing have bars of no width, not broken ones', () => {
  expect(lossBars([area('Effluent', 0, 0, 0)], 1180).bars[0]).toMatchObject({ width: 0, from: 210, to: 210, isBeyond: false })
})
