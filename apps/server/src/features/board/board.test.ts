import { showBoard, showBoardSummary } from '@glandkeeper/contract/board'
import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { Standing } from '@glandkeeper/contract/reserve'
import { standingBands, standingOf } from '@glandkeeper/engines/reserve/standing'
import { aNip, aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { mm, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { standingWhere } from './queries.ts'

/** Valves whose last gaps are given; keep clear is 3 mm. */
async function aBoard(gaps: Readonly<Record<string, number | null>>) {
  const server = await aServer()
  const ids: Record<string, string> = {}
  for (const [tag, gap] of Object.entries(gaps)) {
    const { valveId } = await server.expectOk('planner', addValve, {
      body: aValve({ areaCode: 'BH', tag, service: tag.startsWith('S') ? 'steam' : 'stock', description: `Seals ${tag}` }),
    })
    ids[tag] = valveId
    if (gap !== null)
      await server.expectOk('fitter', sendEvents, {
        body: { events: [aReading({ valveId, takenAt: '2026-05-01T08:00:00Z', gapLeft: gap, gapRight: gap })] },
      })
  }
  const tags = async (
    query: Parameters<typeof server.expectOk<typeof showBoard>>[2] extends { query?: infer Q } | undefined ? Q : never,
  ) => (await server.expectOk('fitter', showBoard, { query: query ?? {} })).rows.map((row) => row.tag)
  return { ...server, ids, tags }
}

describe('the board', () => {
  it('puts what runs out first on top: spent, then by date, then by what is left, and the unknown last', async () => {
    const { tags, expectOk, ids } = await aBoard({
      'S-ample': 15,
      'S-spent': 2.5,
      'T-unknown': null,
      'T-low': 4,
      'T-falling': 12,
    })
    const valveId = ids['T-falling']!
    const nips = ['2026-05-02', '2026-05-20', '2026-06-10'].map((day, count) =>
      aNip({ valveId, takenAt: `${day}T08:00:00Z`, turnsLeft: 1, turnsRight: 1, count }),
    )
    const readings = ['2026-01-02', '2026-02-20', '2026-03-10', '2026-05-01'].map((day, n) =>
      aReading({ valveId, takenAt: `${day}T10:00:00Z`, gapLeft: 15 - n, gapRight: 15 - n }),
    )
    await expectOk('fitter', sendEvents, { body: { events: [...readings, nips[0]] } })
    expect(await tags({})).toEqual(['S-spent', 'T-low', 'T-falling', 'S-ample', 'T-unknown'])
    expect(await tags({ order: 'least reserve' })).toEqual(['S-spent', 'T-low', 'T-falling', 'S-ample', 'T-unknown'])
    expect(await tags({ order: 'tag' })).toEqual(['S-ample', 'S-spent', 'T-falling', 'T-low', 'T-unknown'])
    expect((await tags({ order: 'seen longest ago' }))[0]).toBe('T-unknown')
  })

  it('puts little travel and no line yet above much travel and a line that ends in a hundred years', async () => {
    const { tags, expectOk, ids } = await aBoard({ 'A-slow': null, 'B-new': 3.2 })
    const readings = ['2020-01-01', '2022-01-01', '2024-01-01', '2026-05-01'].map((day, n) =>
      aReading({ valveId: ids['A-slow']!, takenAt: `${day}T10:00:00Z`, gapLeft: 18 - n / 4, gapRight: 18 - n / 4 }),
    )
    await expectOk('fitter', sendEvents, { body: { events: readings } })
    expect(await tags({})).toEqual(['B-new', 'A-slow'])
  })

  it('filters by standing, area, service and every word of a search, whatever its capitals and accents', async () => {
    const { tags } = await aBoard({ 'S-one': 2, 'S-two': 4.5, 'T-three': 6.5, 'T-four': 14 })
    expect(await tags({ standing: 'spent' })).toEqual(['S-one'])
    expect(await tags({ standing: 'book' })).toEqual(['S-two'])
    expect(await tags({ standing: 'watch' })).toEqual(['T-three'])
    expect(await tags({ standing: 'ample' })).toEqual(['T-four'])
    expect(await tags({ service: 'steam', order: 'tag' })).toEqual(['S-one', 'S-two'])
    expect(await tags({ find: 'SÉALS t-', order: 'tag' })).toEqual(['T-four', 'T-three'])
    expect(await tags({ area: 'TF' })).toEqual([])
  })

  it('gives pages that together are the whole list, each valve once', async () => {
    const { tags } = await aBoard(Object.fromEntries([...Array(7).keys()].map((n) => [`S-${n}`, 5])))
    const pages = [await tags({ limit: '3' }), await tags({ limit: '3', offset: '3' }), await tags({ limit: '3', offset: '6' })]
    expect(pages.map((page) => page.length)).toEqual([3, 3, 1])
    expect(new Set(pages.flat()).size).toBe(7)
  })

  it('counts standings, services and areas', async () => {
    const { expectOk } = await aBoard({ 'S-one': 2, 'S-two': 4.5, 'T-three': 6.5, 'T-four': 14, 'T-five': null })
    expect(await expectOk('fitter', showBoardSummary)).toEqual({
      total: 5,
      stopOn: '2026-11-02',
      standing: { ample: 1, watch: 2, book: 1, spent: 1 },
      services: [
        { service: 'steam', valves: 2 },
        { service: 'stock', valves: 3 },
      ],
      areas: [{ code: 'BH', name: 'Boiler house', valves: 5, bookOrSpent: 2 }],
    })
  })

  it('shows nothing of another site', async () => {
    const one = await aBoard({ 'S-one': 5 })
    await one.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: one.now } })
      await write.person.update({ where: { signInName: 'fitter' }, data: { siteId: 'other' } })
    })
    expect(await one.tags({})).toEqual([])
  })
})

it('asks the database for a standing by the same rule the engine has', async () => {
  const { store, siteId, ids } = await aBoard({ 'S-one': 5 })
  const valveId = ids['S-one']!
  const { book, watch } = standingBands
  const reserves = [null, -1, 0, 0.1, book.reserve, book.reserve + 0.1, watch.reserve, watch.reserve + 0.1, 30]
  const chances = [null, 0, watch.chance - 0.001, watch.chance, book.chance - 0.001, book.chance, 1]
  for (const reserveMm of reserves) {
    for (const chanceBeforeStop of chances) {
      await store.write((write) => write.valveState.update({ where: { valveId }, data: { reserveMm, chanceBeforeStop } }))
      const found = []
      for (const standing of Standing.options)
        if (await store.read.valveState.count({ where: { siteId, ...standingWhere(standing, standingBands) } }))
          found.push(standing)
      const expected = standingOf({
        reserve: reserveMm === null ? null : mm(reserveMm),
        chanceBeforeStop: chanceBeforeStop === null ? null : ratio(chanceBeforeStop),
      })
      expect([reserveMm, chanceBeforeStop, found]).toEqual([reserveMm, chanceBeforeStop, [expected]])
    }
  }
})
