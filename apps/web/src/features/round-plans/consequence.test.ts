import type { PlanBlock, RoundPlan } from '@glandkeeper/contract/round-plans'
import { describe, expect, it } from 'vitest'
import { consequenceOf } from './consequence.ts'
import { consequenceInWords, whyInWords } from './reason-words.ts'

const block = (areaCode: string, week: number, hours: number, windows: PlanBlock['windows'] = []): PlanBlock =>
  ({ crewId: 'A', areaCode, week, visits: 3, hours, isFrozen: false, isPinned: false, windows }) as PlanBlock
const window = (earliest: number, latest: number, visits: number) =>
  ({ earliest, latest, visits, hours: 1 }) as PlanBlock['windows'][number]
const boilerHouse = block('BH', 2, 4, [window(1, 3, 2), window(2, 2, 1)])
const plan = {
  crews: [{ crewId: 'A', name: 'Early', hours: [10, 10, 10, 6, 10] }],
  areas: [
    { areaCode: 'BH', name: 'Boiler house', setUpHours: 1, closedWeeks: [4] },
    { areaCode: 'TF', name: 'Tank farm', setUpHours: 0.5, closedWeeks: [] },
  ],
  blocks: [boilerHouse, block('TF', 3, 2), block('BH', 1, 1)],
} as unknown as RoundPlan

describe('the consequence of moving an area to another week', () => {
  it('counts hours with set-up in both weeks, and visits that leave their window', () => {
    expect(consequenceOf(plan, boilerHouse, 3)).toEqual({
      visits: 3,
      leaves: { load: 0, hours: 10 },
      joins: { load: 7.5, hours: 6 },
      tooEarly: 0,
      tooLate: 1,
      isAreaClosed: false,
      savesSetUp: false,
    })
  })

  it('pays one set-up where the area is open anyway, and knows closed weeks', () => {
    expect(consequenceOf(plan, boilerHouse, 1)).toMatchObject({ joins: { load: 6 }, savesSetUp: true, tooEarly: 1 })
    expect(consequenceOf(plan, boilerHouse, 4)).toMatchObject({ isAreaClosed: true, tooLate: 3 })
  })

  it('is said in a sentence with its figures', () => {
    const where = { area: 'Boiler house', from: '2026-06-01', to: '2026-06-08' }
    expect(consequenceInWords(consequenceOf(plan, boilerHouse, 3), where).replaceAll('\u00a0', ' ')).toBe(
      'Boiler house, 3 visits, week 23 to 24. Week 24 then has 7.5 h of 6.0 h, week 23 0.0 h. That is 1.5 h over. ' +
        '1 of them comes later than its last week.',
    )
  })
})

describe('why a visit is in its week', () => {
  it.each([
    ['2026-06-01', '2026-06-01', 'In the week it is due.', 'in its due week'],
    ['2026-06-22', '2026-06-01', '3 weeks overdue: as soon as can be.', 'in its due week'],
    ['2026-05-25', '2026-06-01', 'A week before it is due. So that the area is opened once for all of them.', 'area opens once'],
    ['2026-06-15', '2026-06-01', '2 weeks after it is due. The week it is due has no hours to spare.', 'due week is full'],
    [null, '2026-06-01', 'There is no crew to walk: add one.', 'no crew'],
  ] as const)('%s against %s', (weekOf, dueWeekOf, says, reason) => {
    expect(whyInWords({ weekOf, dueWeekOf, reason })).toBe(says)
  })
})
