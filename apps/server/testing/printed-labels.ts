import { printLabels } from '@glandkeeper/contract/labels'
import { addValve } from '@glandkeeper/contract/valves'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { expect } from 'vitest'
import { newId } from '../src/platform/ids.ts'
import { aServer, type TestServer } from './a-server.ts'
import { type PrintedPage, printedPages } from './printed.ts'

export const add = (server: TestServer, overrides: ValveOverrides) =>
  server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', ...overrides }) })

/** Every code is drawn and read again: half a minute where the machine is busy. */
export const MANY_CODES = 60_000

/** A server with so many valves BH-1, BH-2 …, in walking order. */
export async function withValves(count: number, overrides: ValveOverrides = {}): Promise<TestServer> {
  const server = await aServer()
  await add(server, { tag: 'BH-1', walkPosition: 1, level: 0, ...overrides })
  await addLike(
    server,
    Array.from({ length: count - 1 }, (_, index) => `BH-${index + 2}`),
  )
  return server
}

/** Valves like the first one in all but tag and place in the walk: their rows alone, since a label needs no more. */
export async function addLike(server: TestServer, tags: readonly string[]): Promise<void> {
  const row = (await server.store.read.valve.findFirst({ orderBy: { walkPosition: 'asc' } }))!
  const data = tags.map((tag, index) => ({ ...row, id: newId(), tag, walkPosition: row.walkPosition + 1 + index }))
  await server.store.write((write) => write.valve.createMany({ data }))
}

export async function printed(server: TestServer, query = '', headers: Record<string, string> = {}): Promise<PrintedPage[]> {
  const answer = await server.app.inject({
    url: `${printLabels.path}?${query}`,
    headers: { host: 'mill.example', cookie: server.cookieOf('fitter'), ...headers },
  })
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
  return printedPages(answer.rawPayload)
}

export const saidOn = (pages: readonly PrintedPage[]) => pages.flatMap(({ pieces }) => pieces.map(({ says }) => says))
export const tagsOn = (pages: readonly PrintedPage[]) => saidOn(pages).filter((says) => /^BH-\d+$/.test(says))
