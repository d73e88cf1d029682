import { setTimeout } from 'node:timers/promises'
import { showHealth } from '@glandkeeper/contract/health'
import { expect, it } from 'vitest'
import type { TestServer } from '../../../testing/a-server.ts'
import { anOutage, aPlanInUse, type OutageOverrides } from '../../../testing/planned-outage.ts'
import { type PrintedPage, printedPages, tagOf } from '../../../testing/printed.ts'
import { withValves } from '../../../testing/valves-alike.ts'
import { slotOfOutage } from '../repack-plans/index.ts'
import { whoDecides } from './before-work.ts'

/** Forty packs are printed in seconds; a machine that runs every test at once takes many. */
const SLOW_MACHINE = 120_000

const tagsTo = (count: number) => Array.from({ length: count }, (_, index) => `BH-${index + 1}`)

/** An outage with so many valves, three in a boundary. */
async function withOutage(count: number, overrides: OutageOverrides = {}): Promise<{ server: TestServer; outageId: string }> {
  const server = await withValves(count, { access: 'scaffold' })
  await server.store.write(async (write) => {
    for (const [index, tag] of tagsTo(count).entries())
      await write.valve.updateMany({ where: { tag }, data: { isolationBoundary: `BH line ${Math.floor(index / 3) + 1}` } })
  })
  const outageId = await anOutage(server, overrides)
  await aPlanInUse(server, slotOfOutage(outageId), tagsTo(count))
  return { server, outageId }
}

const packs = async (server: TestServer, outageId: string, part = 1) => printedPages(await printed(server, outageId, part))

async function printed(server: TestServer, outageId: string, part: number): Promise<Uint8Array> {
  const answer = await server.app.inject({
    url: `/api/outages/${outageId}/job-pack.pdf?part=${part}`,
    headers: { host: 'mill.example', cookie: server.cookieOf('fitter') },
  })
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
  return answer.rawPayload
}

/** Lines are broken where the paper wants it: blanks say nothing. */
const flat = (text: string) => text.replaceAll(/\s+/gu, '')
const saysOf = ({ pieces }: PrintedPage) => flat(pieces.map(({ says }) => says).join(' '))
const isCover = (page: PrintedPage) => saysOf(page).includes('·cover·')

/** What stands in each row of a cover, by its tag: the page of its pack, or its part. */
function listOn(pages: readonly PrintedPage[]): Map<string, string> {
  const rows = pages.filter(isCover).flatMap(({ pieces }) =>
    pieces
      .filter(({ says, x }) => /^BH-\d+$/.test(says) && x < 150)
      .map((tag): [string, string] => {
        const row = pieces.filter(({ y, x }) => Math.abs(y - tag.y) < 1 && x > 530)
        return [tag.says, row.map(({ says }) => says).join(' ')]
      }),
  )
  return new Map(rows)
}

/** Milliseconds of the slowest answer while something else goes on. */
async function longestWait(server: TestServer, meanwhile: Promise<unknown>): Promise<number> {
  const over = { is: false }
  void meanwhile.finally(() => (over.is = true))
  let longest = 0
  while (!over.is) {
    const asked = performance.now()
    await server.expectOk('fitter', showHealth)
    await setTimeout(5)
    longest = Math.max(longest, performance.now() - asked)
  }
  return longest
}

it(
  'every valve is on the cover, with the page its pack begins on; each pack counts by itself, and others are answered meanwhile',
  { timeout: SLOW_MACHINE },
  async () => {
    const { server, outageId } = await withOutage(43)
    const began = performance.now()
    const first = printed(server, outageId, 1)
    expect(await longestWait(server, first)).toBeLessThan((performance.now() - began) / 2)
    const pages = await printedPages(await first)
    const list = listOn(pages)
    expect([...list.keys()]).toEqual(tagsTo(43))
    // Boundaries of three: the fourteenth would be torn, and begins the next part.
    for (const tag of tagsTo(39)) {
      const page = pages[Number(list.get(tag)) - 1]!
      expect([tag, tagOf(page), saysOf(page).includes('1of4')]).toEqual([tag, tag, true])
    }
    for (const tag of tagsTo(43).slice(39)) expect([tag, list.get(tag)]).toEqual([tag, 'part 2'])
    const second = await packs(server, outageId, 2)
    expect([...listOn(second).keys()]).toEqual(tagsTo(43).slice(39))
    for (const [tag, page] of listOn(second)) expect(tagOf(second[Number(page) - 1]!)).toBe(tag)
    expect(saysOf(second[0]!)).toContain('part2of2')
  },
)

it('the cover says when, how sure that is, the hours of each trade, and who decides', { timeout: SLOW_MACHINE }, async () => {
  const { server, outageId } = await withOutage(4, { fittingHours: 6, areaCodes: '["BH"]' })
  const [cover] = await packs(server, outageId)
  const wanted = [
    'Short stop in June',
    'Likely from 9 June 2026, for 5 days. First day not settled: 2 June 2026 to 16 June 2026.',
    'Down: Boiler house.',
    'By the plan in use, Plan of May: 4 valves to repack.',
    whoDecides,
    // 4 valves of 2 h, of 1.5 h.
    'fitting 8.0 h 6.0 h 2.0 h too many',
    'isolating 6.0 h 30.0 h',
    'BH line 1 BH-1',
    'the same BH-2',
    'BH line 2 BH-4',
    'scaffold 2.0 1.5',
  ]
  for (const says of wanted) expect([says, saysOf(cover!).includes(flat(says))]).toEqual([says, true])
})

it('the kit follows the cover, in the first part', { timeout: SLOW_MACHINE }, async () => {
  const { server, outageId } = await withOutage(2)
  const pages = await packs(server, outageId)
  expect(pages.filter(isCover)).toHaveLength(2)
  for (const says of ['Kit for Short stop in June, from the store', 'needed', 'on hand', 'Not worked out', 'BH-1, BH-2'])
    expect([says, saysOf(pages[1]!).includes(flat(says))]).toEqual([says, true])
})

it('without a plan in use there is a cover that says so, and nothing else', { timeout: SLOW_MACHINE }, async () => {
  const server = await withValves(2)
  const pages = await packs(server, await anOutage(server))
  expect(pages).toHaveLength(1)
  for (const says of ['No plan of repacks is in use', whoDecides, 'part 1 of 1'])
    expect([says, saysOf(pages[0]!).includes(flat(says))]).toEqual([says, true])
})

it('an outage that is called off, or has no repack, says so', { timeout: SLOW_MACHINE }, async () => {
  const { server } = await withOutage(1)
  const [cover, ...others] = await packs(server, await anOutage(server, { state: 'called off' }))
  expect(others).toEqual([])
  expect(saysOf(cover!)).toContain(flat('This outage is called off.'))
  expect(saysOf(cover!)).toContain(flat('The plan in use, Plan of May, has no repack in it.'))
})

it('the longest words there may be stay on the cover', { timeout: SLOW_MACHINE }, async () => {
  const server = await withValves(1, { tag: 'W'.repeat(40), description: 'W'.repeat(200), isolationBoundary: 'W'.repeat(40) })
  await server.store.write((write) => write.area.updateMany({ data: { name: 'W'.repeat(80) } }))
  const outageId = await anOutage(server, { name: 'W'.repeat(80) })
  await aPlanInUse(server, slotOfOutage(outageId), ['W'.repeat(40)])
  const covers = (await packs(server, outageId)).filter(isCover)
  expect(covers.length).toBeGreaterThan(0)
  for (const { pieces, width } of covers)
    for (const { says, x, width: long } of pieces) expect([says, x >= 10, x + long <= width - 10]).toEqual([says, true, true])
})
