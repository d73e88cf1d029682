import type { RepackSlot } from '@glandkeeper/contract/repack-plans'
import { addDays, format, parseISO } from 'date-fns'
import { describe, expect, it } from 'vitest'
import { BLOCK_WIDTH, slotAxis } from './axis-geometry.ts'

const hours = { fitting: 20, scaffolding: 8, isolating: 0 } as RepackSlot['hours']
const used = { fitting: 10, scaffolding: 10, isolating: 0 } as RepackSlot['hours']
const dayAfter = (day: string, days: number) => format(addDays(parseISO(day), days), 'yyyy-MM-dd')

const slot = (kind: RepackSlot['kind'], days: readonly [string, string, string], length: number): RepackSlot => {
  const [earliestOn, likelyOn, latestOn] = days
  const lastOn = dayAfter(likelyOn, length - 1)
  return {
    slotId: `${kind}:${likelyOn}`,
    kind,
    name: kind,
    earliestOn,
    likelyOn,
    latestOn,
    lastOn,
    areaCodes: [],
    hours,
    used,
    repacks: 1,
  }
}
const fortnights = (monday: string, count: number) =>
  Array.from({ length: count }, (_, index) => dayAfter(monday, index * 14)).map((day) => slot('fortnight', [day, day, day], 14))
const outage = (earliest: string, likely: string, latest: string, length = 7) =>
  slot('outage', [earliest, likely, latest], length)

/** 26 fortnights from a Monday, 40 px each. */
const year = { startsOn: '2027-01-04', weeks: 52, slots: fortnights('2027-01-04', 26) }
const width = 44 + 8 + 26 * 40
const draw = (slots: readonly RepackSlot[], from = 0, px = width) =>
  slotAxis({ plan: { ...year, slots: [...year.slots, ...slots] }, from, width: px })

describe('the axis of slots', () => {
  it('has each fortnight at its day, as wide as the others, up to the right end', () => {
    const { columns, step, right } = draw([])
    expect(columns.map(({ x }) => x)).toEqual(Array.from({ length: 26 }, (_, index) => 44 + index * 40))
    expect([step, right]).toEqual([40, width - 8])
  })

  it('begins a fortnight earlier, drawn empty, where the plan begins inside one', () => {
    const axis = slotAxis({ plan: { startsOn: '2027-01-06', weeks: 52, slots: fortnights('2027-01-18', 25) }, from: 0, width })
    expect(axis.columns[0]?.x).toBe(44 + 40)
    expect(axis.columns.at(-1)?.x).toBe(44 + 25 * 40)
    expect(axis.xOf('2027-01-06')).toBeCloseTo(44 + (2 / 14) * 40, 9)
  })

  it('stands a block over its days: dashed from the earliest to the end of the latest, solid where it is likely', () => {
    const [block] = draw([outage('2027-06-07', '2027-06-21', '2027-07-05')]).blocks
    expect(block?.days).toEqual({
      earliest: 44 + 11 * 40,
      likely: 44 + 12 * 40,
      likelyEnd: 44 + 12.5 * 40,
      latestEnd: 44 + 13.5 * 40,
    })
    expect((block?.x ?? 0) + BLOCK_WIDTH / 2).toBe(44 + 12.25 * 40)
  })

  it('puts blocks that would cover each other into rows, and never outside', () => {
    const near = ['2027-01-05', '2027-01-20', '2027-02-03', '2027-12-20'].map((day) => outage(day, day, day))
    const { blocks, rows, right } = draw(near)
    expect(blocks.map(({ row }) => row)).toEqual([0, 1, 2, 0])
    expect(rows).toBe(3)
    for (const { x } of blocks) {
      expect(x).toBeGreaterThanOrEqual(44)
      expect(x + BLOCK_WIDTH).toBeLessThanOrEqual(right)
    }
  })

  it('keeps the mark of an outage that reaches over the end inside, and leaves out one that is beyond', () => {
    const { blocks, right } = draw([
      outage('2027-12-27', '2027-12-30', '2028-01-20', 14),
      outage('2028-02-01', '2028-02-01', '2028-02-01'),
    ])
    expect(blocks).toHaveLength(1)
    expect(blocks[0]?.days.latestEnd).toBe(right)
  })

  it('shows hours used as a share of those there, over one where they are over, and none where there are none', () => {
    const [column] = draw([]).columns
    expect(column?.bars.map(({ share, isThere }) => [share, isThere])).toEqual([
      [0.5, true],
      [1.25, true],
      [0, false],
    ])
    const last = column?.bars[2]
    expect((last?.x ?? 0) + draw([]).barWidth).toBeLessThan(44 + 40)
  })

  it('turns pages where the weeks do not fit', () => {
    const narrow = draw([], 0, 44 + 8 + 10 * 28)
    expect(narrow.columns).toHaveLength(10)
    expect([narrow.earlier, narrow.later]).toEqual([null, 10])
    const last = draw([], 20, 44 + 8 + 10 * 28)
    expect(last.columns.map(({ slot: { slotId } }) => slotId)).toEqual(year.slots.slice(20).map(({ slotId }) => slotId))
    expect([last.earlier, last.later]).toEqual([14, null])
    expect(draw([], 9999).columns).toHaveLength(1)
  })

  it('names months at their first day, the first and each January with its year', () => {
    const { months } = slotAxis({
      plan: { startsOn: '2026-11-30', weeks: 16, slots: fortnights('2026-11-30', 8) },
      from: 0,
      width,
    })
    expect(months.map(({ name }) => name)).toEqual(['Dec 2026', 'Jan 2027', 'Feb', 'Mar'])
    expect(months[0]?.x).toBeCloseTo(44 + (1 / 14) * 64, 9)
  })
})
