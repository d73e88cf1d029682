import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { getDocumentProxy } from 'unpdf'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { cautions, proof } from '../cut-cards/hazards.ts'

const POINTS_PER_MILLIMETRE = 72 / 25.4

async function withValve(overrides: ValveOverrides = {}): Promise<TestServer> {
  const server = await aServer()
  const valve = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1', ...overrides }) })
  await server.expectOk('fitter', sendEvents, {
    body: { events: [aRepack({ valveId: valve.valveId, takenAt: '2026-03-02T07:10:00Z' })] },
  })
  return server
}

const ask = (server: TestServer, address: string) =>
  server.app.inject({ url: `/api/valves/${address}`, headers: { cookie: server.cookieOf('fitter') } })

interface Piece {
  readonly says: string
  readonly from: number
  readonly to: number
}

/** A sheet as a PDF reader sees it: its sides in points, and each piece of text with where it begins and ends. */
async function readBack(bytes: Uint8Array) {
  const pdf = await getDocumentProxy(new Uint8Array(bytes))
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, index) => {
      const page = await pdf.getPage(index + 1)
      const { items } = await page.getTextContent()
      const pieces = items.flatMap((item): Piece[] =>
        'str' in item
          ? [{ says: item.str, from: item.transform[4] as number, to: (item.transform[4] as number) + item.width }]
          : [],
      )
      return { sides: page.view.slice(2) as number[], pieces }
    }),
  )
  const pieces = pages.flatMap((page) => page.pieces)
  return { pages, pieces, text: flat(pieces.map(({ says }) => says).join(' ')) }
}

/** Lines are broken where the paper wants it: blanks say nothing. */
const flat = (text: string) => text.replaceAll(/\s+/gu, '')

async function sheet(server: TestServer, size: 'A5' | 'A4') {
  const answer = await ask(server, `BH-1/cut-card.pdf?size=${size}`)
  expect(answer.statusCode).toBe(200)
  expect(answer.headers['content-type']).toBe('application/pdf')
  return readBack(answer.rawPayload)
}

describe('the card on paper', () => {
  it.each([
    ['A5', 148, 210, 2],
    ['A4', 210, 297, 1],
  ] as const)('%s: its size, tag, length, torques, proof and every caution', async (size, width, height, sheets) => {
    const { pages, text } = await sheet(await withValve(), size)
    expect(pages).toHaveLength(sheets)
    for (const { sides } of pages) {
      expect((sides[0] ?? 0) / POINTS_PER_MILLIMETRE).toBeCloseTo(width, 0)
      expect((sides[1] ?? 0) / POINTS_PER_MILLIMETRE).toBeCloseTo(height, 0)
    }
    const wanted = [
      'BH-1',
      '114.7',
      '6 rings of 8.5 mm',
      '9.0',
      '9.0 stem through',
      '18.0',
      '29.9',
      '18 mm (present size)',
      'Hot, 160 °C',
    ]
    for (const says of [...wanted, ...cautions, ...proof]) expect(text).toContain(flat(says))
  })

  it('nothing is printed outside the paper', async () => {
    const { pages } = await sheet(await withValve({ description: 'Main steam stop, second group, north side' }), 'A5')
    for (const { sides, pieces } of pages)
      for (const { from, to, says } of pieces) expect([says, from >= 0, to <= (sides[0] ?? 0)]).toEqual([says, true, true])
  })

  it.each(['A5', 'A4'])('%s: nor is the longest tag there may be', async (size) => {
    const tag = 'W'.repeat(40)
    const answer = await ask(await withValve({ tag }), `${tag}/cut-card.pdf?size=${size}`)
    const { pages, text } = await readBack(answer.rawPayload)
    expect(text).toContain(tag)
    for (const { sides, pieces } of pages)
      for (const { from, to, says } of pieces) expect([says, from >= 0, to <= (sides[0] ?? 0)]).toEqual([says, true, true])
  })

  it('in front, before anything is cut, it says to isolate, and the cautions stand there too', async () => {
    const { pages } = await sheet(await withValve(), 'A5')
    const front = flat((pages[0]?.pieces ?? []).map(({ says }) => says).join(' '))
    for (const says of cautions) expect(front).toContain(flat(says))
  })

  it('the cord is 114.7 mm long on the paper, and the check rule 50 mm', async () => {
    const { pieces } = await sheet(await withValve(), 'A5')
    const piece = (says: string) => pieces.find((one) => one.says === says)
    // Lettering stands where the cord's upper edge begins and ends: that edge measures the length.
    const edge =
      ((piece('8.5 square')?.to ?? 0) - (piece('skive 45°, both ends the same way')?.from ?? 0)) / POINTS_PER_MILLIMETRE
    expect(Math.abs(edge - 114.668)).toBeLessThan(0.1)
    const middle = (says: string) => ((piece(says)?.from ?? 0) + (piece(says)?.to ?? 0)) / 2
    expect(Math.abs((middle('50') - middle('10')) / POINTS_PER_MILLIMETRE - 40)).toBeLessThan(0.1)
  })

  it('a ring longer than the sheet is drawn broken, and says so', async () => {
    const server = await withValve({ gland: { boxBore: 120, stemDiameter: 80, boxDepth: 120, noseLength: 60 } })
    expect((await sheet(server, 'A5')).text).toContain(flat('Longer than the room here'))
  })

  it('a valve without bore has its line to write on', async () => {
    const { text } = await sheet(await withValve({ gland: { boxBore: null } }), 'A5')
    expect(text).toContain(flat('bore not measured: measure before cutting'))
    expect(text).toContain(flat('Not to scale: bore not measured'))
    expect(text).not.toContain('114.7')
  })

  it('has letters for Greek, Cyrillic and accents, and takes signs of markup for letters', async () => {
    const description = 'Ατμός · Пар · Žluť <b>&"'
    expect((await sheet(await withValve({ description }), 'A4')).text).toContain(flat(description))
  })

  it('a tag of any script makes a plain file name', async () => {
    const server = await withValve({ tag: 'ВН 1/ä' })
    const answer = await ask(server, `${encodeURIComponent('ВН 1/ä')}/cut-card.pdf`)
    expect(answer.headers['content-disposition']).toBe('inline; filename="cut-card--1-.pdf"')
  })
})

it('refuses a valve nobody knows and a paper it has not', async () => {
  const server = await withValve()
  expect((await ask(server, 'NO-1/cut-card.pdf')).json()).toMatchObject({ status: 404, code: 'valve/unknown' })
  expect((await ask(server, 'BH-1/cut-card.pdf?size=A3')).json()).toMatchObject({ status: 422, code: 'request/invalid' })
})
