import { RingCause, RingCondition, sendEvents } from '@glandkeeper/contract/events'
import { firstOfAll } from '@glandkeeper/drawings/cut-card-words'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import type { ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { codesOn, type PrintedPage, printedPages } from '../../../testing/printed.ts'
import { add } from '../../../testing/valves-alike.ts'
import { cautions, proof } from '../cut-cards/hazards.ts'
import { whoDecides } from './before-work.ts'

const POINTS_PER_PX = 0.75
const MILLIMETRE = 72 / 25.4
/** A pack is printed in a second; a machine that runs every test at once takes many. */
const SLOW_MACHINE = 60_000

async function withValve(overrides: ValveOverrides = {}): Promise<TestServer> {
  const server = await aServer()
  const { valveId } = await add(server, { tag: 'BH-1', isolationBoundary: 'BH boundary 1', ...overrides })
  const repack = aRepack({ valveId, takenAt: '2026-03-02T07:10:00Z' })
  await server.expectOk('fitter', sendEvents, { body: { events: [repack] } })
  return server
}

async function fileOf(server: TestServer, tag = 'BH-1'): Promise<Buffer> {
  const answer = await server.app.inject({
    url: `/api/valves/${encodeURIComponent(tag)}/job-pack.pdf`,
    headers: { host: 'mill.example', cookie: server.cookieOf('fitter') },
  })
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
  return answer.rawPayload
}

const packOf = async (server: TestServer, tag?: string): Promise<PrintedPage[]> => printedPages(await fileOf(server, tag))

/** Lines are broken where the paper wants it: blanks say nothing. */
const flat = (text: string) => text.replaceAll(/\s+/gu, '')
const saysOf = ({ pieces }: PrintedPage) => flat(pieces.map(({ says }) => says).join(' '))

describe('the pack of a valve', { timeout: SLOW_MACHINE }, () => {
  it('is four pages of A4, each with its tag, which of how many it is, and to isolate before all else', async () => {
    const pages = await packOf(await withValve())
    expect(pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual(
      Array.from({ length: 4 }, () => [595, 842]),
    )
    for (const [index, page] of pages.entries()) {
      const tag = page.pieces.find(({ says }) => says === 'BH-1')
      expect(tag?.size).toBeGreaterThan(20)
      expect(tag?.y).toBeLessThan(60)
      for (const says of [firstOfAll, `${index + 1} of 4`, 'Job pack BH-1 · it does not authorise work'])
        expect([index, says, saysOf(page).includes(flat(says))]).toEqual([index, says, true])
    }
  })

  it('begins with which valve it is, what is dangerous, and the isolation to be filled in, its boundary named', async () => {
    const server = await withValve({ access: 'scaffold', temperature: 160, pressure: 5 })
    await add(server, { tag: 'BH-2', isolationBoundary: 'BH boundary 1' })
    await add(server, { tag: 'BH-3', isolationBoundary: 'another' })
    const [first] = await packOf(server)
    const says = saysOf(first!)
    const valve = ['Boiler house, level 1', 'scaffold', 'saturated steam', '160 °C', '5 bar', 'Hot, 160 °C', 'must not fall']
    const form = ['isolation point', 'position', 'lock number', 'tag number', 'isolated by', 'date and time']
    const checks = ['drained at', 'vented at', 'proved zero at', 'isolation tried before loosening', 'handed back by']
    const together = ['BH boundary 1. Isolated together with it: BH-2. By the register, only an outage isolates it.']
    for (const words of [...valve, ...form, ...checks, ...together, ...cautions, whoDecides])
      expect([words, says.includes(flat(words))]).toEqual([words, true])
    expect(says).not.toContain('BH-3')
  })

  it('has the cut card, then what to draw and the steps, each with its box', async () => {
    const [, card, work] = await packOf(await withValve())
    for (const words of ['6 rings of 8.5 mm', '114.7', '7.1 to 10.8 is right', 'Before a nut is loosened', '29.9 read both gaps'])
      expect([words, saysOf(card!).includes(flat(words))]).toEqual([words, true])
    for (const words of [
      'From the store',
      'no listed cord fits',
      '18 mm (present size)',
      'Steps, in this order',
      '1 The first page',
      '6 at 3',
      ...proof,
    ])
      expect([words, saysOf(work!).includes(flat(words))]).toEqual([words, true])
    const boxes = work!.rectangles().filter(({ width, height }) => width === 9 && height === 9)
    const top = work!.pieces.find(({ says }) => says === 'Steps, in this order')!.y
    const numbers = work!.pieces
      .filter(({ says, x, y }) => /^\d+$/.test(says) && x < 40 && y > top)
      .map(({ says }) => Number(says))
    expect(numbers).toEqual(Array.from({ length: 18 }, (_, index) => index + 1))
    // Proof of the card: 3, store: 5, steps: 17, and a ring each in the eighth.
    expect(boxes).toHaveLength(3 + 5 + 17 + 6)
  })

  it('ends with a record that asks for all an entry takes, old rings by the words of the list', async () => {
    const record = saysOf((await packOf(await withValve())).at(-1)!)
    const asked = [
      'section, mm',
      'family',
      'batch',
      'rings',
      'torque on each nut',
      'gap left, mm',
      'gap right, mm',
      'Follow-up due on',
    ]
    const measured = ['stem', 'bore', 'at the top', 'half way down', 'at the bottom']
    const by = ['own crew', 'contractor', 'Name', 'Date', 'Time', 'butt', 'skive', 'die-formed']
    for (const words of [
      ...asked,
      ...measured,
      ...by,
      ...proof,
      RingCondition.options.join(' · '),
      RingCause.options.join(' · '),
    ])
      expect([words, record.includes(flat(words))]).toEqual([words, true])
  })

  it('has as many rows for old rings as the card has rings, and two more', async () => {
    const deep = await withValve({ gland: { boxDepth: 100, noseLength: 40 } })
    const pages = await packOf(deep)
    const rings = Number(/(\d+)ringsof8\.5mm/.exec(saysOf(pages[1]!))?.[1])
    const rows = pages
      .at(-1)!
      .pieces.filter(({ says }) => /^\d+$/.test(says))
      .map(({ says }) => Number(says))
    expect(rings).toBeGreaterThan(10)
    expect(Math.max(...rows)).toBe(rings % 2 === 0 ? rings + 2 : rings + 3)
  })
})

describe('on every page', { timeout: SLOW_MACHINE }, () => {
  it.each(['BH-1', 'ВН 1/ä+2'])('a code opens %s', async (tag) => {
    const pages = await packOf(await withValve({ tag }), tag)
    const read = await Promise.all(pages.map((page) => codesOn(codeAlone(page))))
    expect(read.map((codes) => codes.map(({ text }) => text))).toEqual(
      pages.map(() => [`http://mill.example/v/${encodeURIComponent(tag)}`]),
    )
  })

  it.each([
    ['the longest words there may be', 'W'],
    ['the same in Cyrillic', 'Щ'],
  ])('with %s nothing leaves the paper, and nothing is printed over something else', async (_, letter) => {
    const words = { description: letter.repeat(200), service: letter.repeat(40), fluid: letter.repeat(80) }
    const tag = letter.repeat(40)
    const server = await withValve({ tag, ...words, isolationBoundary: letter.repeat(40), gland: { studThread: null } })
    await server.store.write((write) => write.area.updateMany({ data: { name: letter.repeat(80) } }))
    await add(server, { tag: `${letter.repeat(39)}2`, isolationBoundary: letter.repeat(40) })
    const pages = await packOf(server, tag)
    for (const page of pages) {
      expect(leaves(page)).toEqual([])
      expect(overprints(page)).toEqual([])
      expect(saysOf(page)).toContain(tag)
    }
  })

  it('every letter is in the file: no face is left to the printer', async () => {
    const text = (await fileOf(await withValve())).toString('latin1')
    const faces = [...text.matchAll(/\/FontDescriptor (\d+) 0 R/g)].map(([, id]) => id!)
    expect(faces.length).toBeGreaterThan(3)
    for (const id of faces) {
      const from = text.indexOf(`\n${id} 0 obj\n`)
      expect(text.slice(from, text.indexOf('endobj', from))).toMatch(/\/FontFile2 \d+ 0 R/)
    }
    // The faces every printer has by itself.
    expect(/\/Subtype \/Type1\b/.test(text)).toBe(false)
  })
})

/** Only what is drawn where the code is: lines of a drawing are rectangles too, of their own measure. */
function codeAlone(page: PrintedPage): PrintedPage {
  return { ...page, rectangles: () => page.rectangles().filter(({ x, y, height }) => x > 480 && y < 110 && height < 5) }
}

function leaves({ width, height, pieces }: PrintedPage): string[] {
  return pieces
    .filter((piece) => piece.x < 10 || piece.x + piece.width > width - 10 || piece.y - piece.size < 5 || piece.y > height - 10)
    .map(({ says }) => says)
}

/** Pairs of words whose letters lie over each other. */
function overprints({ pieces }: PrintedPage): string[] {
  const boxes = pieces.map(({ says, x, y, width, size }) => ({ says, x, right: x + width, top: y - size * 0.7, foot: y }))
  return boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .filter((other) => other.says !== one.says && Math.min(one.right, other.right) - Math.max(one.x, other.x) > 1)
      .filter((other) => Math.min(one.foot, other.foot) - Math.max(one.top, other.top) > 1)
      .map((other) => `${one.says} over ${other.says}`),
  )
}

describe('the drawing on the card', { timeout: SLOW_MACHINE }, () => {
  it.each([
    [45, 28, 48],
    [60, 40, 90],
  ])('bore %i, stem %i, depth %i are to one scale, across and along', async (boxBore, stemDiameter, boxDepth) => {
    const pages = await packOf(await withValve({ gland: { boxBore, stemDiameter, boxDepth, noseLength: boxDepth * 0.45 } }))
    const { pieces } = pages[1]!
    const piece = (says: string) => pieces.find((one) => one.says === says)!
    const gap = pieces.find(({ says, x }) => /^\d+\.\d$/.test(says) && Math.abs(x - piece(String(boxDepth)).x) < 0.5)!
    // Figures stand half way along what they measure; that of the bore begins 8 px from its wall, that of the stem on its axis.
    const along = (piece(String(boxDepth)).y - gap.y) / POINTS_PER_PX / ((boxDepth + Number(gap.says)) / 2)
    const axis = piece(`⌀ ${stemDiameter}`).x + piece(`⌀ ${stemDiameter}`).width / 2
    const across = ((piece(`⌀ ${boxBore}`).x - axis) / POINTS_PER_PX - 8) / (boxBore / 2)
    expect(along).toBeGreaterThan(0.5)
    expect(Math.abs(across / along - 1)).toBeLessThan(0.01)
  })

  it('the cord is 114.7 mm long on the paper', async () => {
    const { pieces } = (await packOf(await withValve()))[1]!
    const from = pieces.find(({ says }) => says.startsWith('skive 45°'))!.x
    const end = pieces.find(({ says }) => says === '8.5 square')!
    expect(Math.abs((end.x + end.width - from) / MILLIMETRE - 114.668)).toBeLessThan(0.1)
  })
})
