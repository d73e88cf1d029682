import { printLabels } from '@glandkeeper/contract/labels'
import { expect } from 'vitest'
import type { TestServer } from './a-server.ts'
import { type PrintedPage, printedPages } from './printed.ts'

/** Every code is drawn and read again: half a minute where the machine is busy. */
export const MANY_CODES = 60_000

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
