import { makeRound, printRound } from '@glandkeeper/contract/rounds'
import { sendEvents } from '@glandkeeper/contract/events'
import { aLeak, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import type { ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { type PrintedPage, printedPages } from '../../../testing/printed.ts'
import { add, withValves } from '../../../testing/valves-alike.ts'
import { cautions } from '../cut-cards/index.ts'

/** What a person waits for at a page is a few; a machine that runs every test at once takes many. */
const SLOW_MACHINE = 60_000

const theRound = (server: TestServer) =>
  server.expectOk('planner', makeRound, {
    body: { name: 'Tuesday round', walkOn: '2026-05-05', fitterId: server.personIds.fitter, areaCodes: ['BH'], dueBy: null },
  })

async function withStops(count: number, overrides: ValveOverrides = {}): Promise<{ server: TestServer; roundId: string }> {
  const server = await withValves(count, overrides)
  return { server, roundId: (await theRound(server)).roundId }
}

const ask = (server: TestServer, roundId: string) =>
  server.app.inject({
    url: printRound.path.replace(':roundId', roundId),
    headers: { cookie: server.cookieOf('fitter') },
  })

async function printed({ server, roundId }: { server: TestServer; roundId: string }): Promise<PrintedPage[]> {
  const answer = await ask(server, roundId)
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
  return printedPages(answer.rawPayload)
}

const saysOf = ({ pieces }: PrintedPage) => pieces.map(({ says }) => says)
const flat = (text: string) => text.replaceAll(/\s+/gu, '')
const textOf = (pages: readonly PrintedPage[]) => flat(pages.flatMap(saysOf).join(' '))
const tagsOn = (page: PrintedPage) => page.pieces.filter(({ says, size }) => /^BH-\d+$/.test(says) && size > 10)

describe('the sheet', () => {
  it.each([
    [1, 1],
    [9, 1],
    [12, 2],
    [36, 4],
  ])('of %i stops has %i pages of A4, each tag once and in walking order, each page numbered', async (stops, pages) => {
    const sheet = await printed(await withStops(stops))
    expect(sheet.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual(
      Array.from({ length: pages }, () => [595, 842]),
    )
    expect(sheet.flatMap(tagsOn).map(({ says }) => says)).toEqual(Array.from({ length: stops }, (_, index) => `BH-${index + 1}`))
    for (const [index, page] of sheet.entries()) expect(saysOf(page)).toContain(`page ${index + 1} of ${pages}`)
  })

  it('a page without the first block takes twelve', async () => {
    const sheet = await printed(await withStops(40))
    expect(tagsOn(sheet[1]!)).toHaveLength(12)
  })

  it('says which round it is, for whom, when, and where', async () => {
    const [page] = await printed(await withStops(2))
    const text = textOf([page!])
    for (const says of ['Tuesday round', 'Tuesday 5 May 2026 · week 19 · The fitter · 2 stops · Boiler house'])
      expect(text).toContain(flat(says))
    expect(text).not.toContain('·about')
  })

  it('says how long it is where that is known, and who put a stop on', async () => {
    const { server, roundId } = await withStops(2)
    await server.store.write(async (write) => {
      await write.round.update({ where: { id: roundId }, data: { minutes: 200, metres: 840.4, levels: 6, weekOf: '2026-05-11' } })
      await write.roundStop.update({
        where: { roundId_position: { roundId, position: 2 } },
        data: { minutes: 12.4, addedById: server.personIds.planner },
      })
    })
    const text = textOf(await printed({ server, roundId }))
    for (const says of ['week 20', 'about 3 h 20 min · 840 m on foot', '6 levels to climb', '12 min · put on by The planner'])
      expect(text).toContain(flat(says))
  })

  it('has for each stop what is known, and room for every entry of a visit', async () => {
    const server = await aServer()
    const { valveId } = await add(server, { tag: 'BH-1' })
    const entries = [
      aReading({ valveId, takenAt: '2026-04-01T08:00:00Z', gapLeft: 7.4, gapRight: 7.2 }),
      aLeak({ valveId, takenAt: '2026-05-02T08:00:00Z', leak: 'weep' }),
    ]
    await server.expectOk('fitter', sendEvents, { body: { events: entries } })
    const text = textOf(await printed({ server, roundId: (await theRound(server)).roundId }))
    const known = ['L 7.4 R 7.2 mm', '4.2 mm left', 'expect gap', '18 mm or 19 mm', '2 May 2026: Leak seen: weep.']
    const room = ['gap left, mm', 'gap right, mm', 'half turn', 'turns left', 'turns right', 'time', 'not done, why', 'note']
    const words = ['leak before dry damp weep drip run', 'leak after dry damp weep drip run', 'stem free firm stiff seized']
    for (const says of [...known, ...room]) expect([says, text.includes(flat(says))]).toEqual([says, true])
    for (const says of words) expect([says, text.includes(flat(says))]).toEqual([says, true])
  })

  it('boxes are 7 mm high and more, and none stands outside its row or the paper', async () => {
    const [page] = await printed(await withStops(9))
    const boxes = page!.rectangles().filter(({ width, height }) => Math.round(width) === 48 && height > 20)
    expect(boxes).toHaveLength(9 * 4)
    for (const { x, height, width } of boxes) expect([height >= 20, x > 0, x + width < 595 - 24]).toEqual([true, true, true])
  })

  it('200 stops are printed while somebody waits', { timeout: SLOW_MACHINE }, async () => {
    const round = await withStops(200)
    const began = performance.now()
    const sheet = await printed(round)
    expect(performance.now() - began).toBeLessThan(SLOW_MACHINE / 3)
    expect(new Set(sheet.flatMap(tagsOn).map(({ says }) => says)).size).toBe(200)
    expect(saysOf(sheet.at(-1)!)).toContain(`page ${sheet.length} of ${sheet.length}`)
  })
})

describe('what is too long', () => {
  it('stays in its cell, tag whole and words cut with a sign', async () => {
    const tag = 'BH-'.padEnd(40, 'W')
    const description = 'Mechanical drying section, '.repeat(8).slice(0, 200)
    const server = await aServer()
    await server.store.write((write) => write.area.updateMany({ data: { name: 'W'.repeat(80) } }))
    await add(server, { tag, description })
    const round = await server.expectOk('planner', makeRound, {
      body: { name: 'W'.repeat(80), walkOn: '2026-05-05', fitterId: null, areaCodes: ['BH'], dueBy: null },
    })
    const [page] = await printed({ server, roundId: round.roundId })
    const byHand = page!
      .rectangles()
      .filter(({ width }) => Math.round(width) === 48)
      .map(({ x }) => x)
    const top = page!.pieces.find(({ says }) => says === '1')!.y
    const cell = page!.pieces.filter(({ x, y }) => y > top - 14 && y < top + 55 && x > 40 && x < 200)
    expect(flat(cell.map(({ says }) => says).join(''))).toContain(tag)
    expect(cell.some(({ says }) => says.endsWith('…'))).toBe(true)
    for (const { says, x, width } of cell) expect([says, x + width < 202]).toEqual([says, true])
    for (const { says, x, width } of page!.pieces) expect([says, x >= 0 && x + width <= 595 - 20]).toEqual([says, true])
    expect(Math.min(...byHand)).toBeGreaterThan(290)
  })

  it('a list of tags to carry for takes three lines and does not push the stops off the page', async () => {
    const { server, roundId } = await withStops(100, { gland: { studThread: null } })
    const [first] = await printed({ server, roundId })
    const below = first!.pieces.find(({ says }) => says.startsWith('Before a nut'))!.y
    const lines = first!.pieces.filter(({ x, y }) => Math.round(x) === 82 && y < below).map(({ says }) => says)
    expect(lines).toHaveLength(1 + 3 + 1)
    expect([lines[0], lines[3]?.endsWith('…'), lines[4]?.startsWith('none likely')]).toEqual(['none known', true, true])
    expect(tagsOn(first!).length).toBeGreaterThan(6)
  })
})

it('what to carry is at the top: spanners of both, cord for the one that is spent, and the cautions of its card', async () => {
  const server = await aServer()
  const ample = await add(server, { tag: 'BH-1', gland: { studThread: 'M10' } })
  const spent = await add(server, { tag: 'BH-2', walkPosition: 80, gland: { boxBore: 44 } })
  const repacked = (valveId: string) => aRepack({ valveId, takenAt: '2026-03-02T07:10:00Z' })
  await server.expectOk('fitter', sendEvents, {
    body: {
      events: [
        repacked(ample.valveId),
        repacked(spent.valveId),
        aReading({ valveId: spent.valveId, takenAt: '2026-05-01T08:00:00Z', gapLeft: 2.5, gapRight: 2.5 }),
      ],
    },
  })
  const [page] = await printed({ server, roundId: (await theRound(server)).roundId })
  const text = textOf([page!])
  // Space 8, graphite braid at 27.5 %: 1 + floor((45 - 8) / 5.8) = 7 rings; 8 · 113.1 + 121.1, a tenth more = 1.13 m.
  for (const says of ['16 mm: 1 stop', '17 mm: other nuts of 1 stop', '18 mm: 1 stop', '2 m of graphite braid, 8 mm: BH-2'])
    expect([says, text.includes(flat(says))]).toEqual([says, true])
  for (const says of cautions) expect(text).toContain(flat(says))
  expect(text).toContain(flat('this sheet authorises no work'))
})
