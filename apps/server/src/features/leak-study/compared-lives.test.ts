import type { RecordedLife } from '@glandkeeper/engines/packing/lives/lives'
import { instant } from '@glandkeeper/units/quantity'
import { expect, it } from 'vitest'
import { comparePackings } from '@glandkeeper/contract/packing-lives'
import { keyOfLives, livesCompared } from './compared-lives.ts'

const day = (count: number) => instant(count * 86_400_000)
const life = (valve: number, endsAt: number | null, lastSeen = 2000): RecordedLife => ({
  valveId: `BH-${valve}`,
  family: 'graphite braid',
  service: 'steam',
  temperature: null,
  from: day(0),
  to: endsAt === null ? null : day(endsAt),
  endedBy: endsAt === null ? null : 'worn out',
  lastSeen: day(lastSeen),
})

const answerFor = (recorded: readonly RecordedLife[]) => {
  const text = new Map(livesCompared(recorded)).get(keyOfLives(null, 'any')) ?? ''
  return comparePackings.ok.parse({ madeAt: null, services: [], ...(JSON.parse(text) as object) })
}

it('five of three thousand that gave out in the first days leave a law too wide to tell, said so and within the contract', () => {
  const many = Array.from({ length: 3000 }, (_, index) => life(index + 10, null))
  const { packings } = answerFor([...[1, 2, 3, 4, 5].map((ends) => life(ends, ends)), ...many])
  expect(packings[0]).toMatchObject({
    lives: 3005,
    wornOut: 5,
    stillIn: 3000,
    weibull: null,
    weibullMissing: 'its limits are too wide to say anything',
  })
})

it('names fifty valves at most, where it gave out soonest first, each once', () => {
  const { packings } = answerFor([
    life(7, null, 30),
    life(3, 90),
    life(3, 80),
    life(1, 85),
    ...Array.from({ length: 60 }, (_, index) => life(100 + index, null)),
  ])
  expect(packings[0]?.valves.slice(0, 3)).toEqual(['BH-3', 'BH-1', 'BH-7'])
  expect(packings[0]?.valves).toHaveLength(50)
})

it('counts apart what is left out: put in before the records, or never looked at since', () => {
  const notSeen = [life(8, null, 0), life(9, null, -5)]
  const { packings, leftOut, notSeenSince } = answerFor([life(1, 90), { ...life(2, 90), from: null }, ...notSeen])
  expect([packings[0]?.lives, leftOut, notSeenSince]).toEqual([1, 1, 2])
})
