import type { Prisma } from '../generated/sqlite/client.ts'
import type { ChainedEvent } from './chain.ts'

/** An event as the chain has it. */
export type Link = ChainedEvent & { readonly hash: string }
/** With the hash of the event one place before it; empty where there is none. */
export type LinkAndBefore = Link & { readonly before: string }

/**
 * Reads of the chain alone: a page of events as one text of JSON. Prisma's own rows take twice as long, and a chain
 * of a million is walked from end to end.
 */
export interface ReadChain {
  /** The events behind a place, in order. */
  behind(siteId: string, position: number, most: number): Promise<Link[]>
  /** Those of these places that are there, in order. */
  at(siteId: string, positions: readonly number[]): Promise<LinkAndBefore[]>
}

type Client = Pick<Prisma.TransactionClient, '$queryRawUnsafe'>

const COLUMNS = 'id, position, valve_id, kind, version, taken_at, received_at, person_id, device, body, hash'
// Whatever an altered row holds in place of a time must come as text.
const PARTS = {
  sqlite: 'e.id, e.position, e.valve_id, e.kind, e.version, e.taken_at, e.received_at, e.person_id, e.device, e.body, e.hash',
  postgresql: `e.id, e.position, e.valve_id, e.kind, e.version, ${asUtc('taken_at')}, ${asUtc('received_at')}, e.person_id, e.device, e.body, e.hash`,
} as const

export function readChain(client: Client, provider: keyof typeof PARTS): ReadChain {
  const [array, all] = provider === 'sqlite' ? ['json_array', 'json_group_array'] : ['json_build_array', 'json_agg']
  const page = (parts: string, from: string) =>
    `SELECT CAST(${all}(${array}(${parts}) ORDER BY e.position) AS TEXT) AS page FROM ${from}`
  const behind = page(
    PARTS[provider],
    `(SELECT ${COLUMNS} FROM event WHERE site_id = $1 AND position > $2 ORDER BY position LIMIT $3) e`,
  )
  const listed =
    provider === 'sqlite'
      ? '(SELECT value FROM json_each($2))'
      : '(SELECT value::int FROM json_array_elements_text(CAST($2 AS json)) AS t(value))'
  const at = page(
    `${PARTS[provider]}, COALESCE(b.hash, '')`,
    'event e LEFT JOIN event b ON b.site_id = e.site_id AND b.position = e.position - 1 ' +
      `WHERE e.site_id = $1 AND e.position IN ${listed}`,
  )
  return {
    behind: async (siteId, position, most) => rowsOf(await client.$queryRawUnsafe(behind, siteId, position, most), siteId),
    at: async (siteId, positions) => rowsOf(await client.$queryRawUnsafe(at, siteId, JSON.stringify(positions)), siteId),
  }
}

const ROWS_OF_A_PAGE = 2_000

/** A site's events in the order of the chain, to a position; in pages, so that a long one is never held whole. */
export async function* chainOf(chain: ReadChain, siteId: string, upTo = Number.MAX_SAFE_INTEGER): AsyncGenerator<Link> {
  // From below the first place: what somebody put before it stands out too.
  let after = -2_147_483_648
  for (;;) {
    const page = await chain.behind(siteId, after, ROWS_OF_A_PAGE)
    for (const event of page) {
      if (event.position > upTo) return
      yield event
    }
    if (page.length < ROWS_OF_A_PAGE) return
    after = page.at(-1)?.position ?? after
  }
}

function asUtc(column: string): string {
  return `to_char(e.${column}, 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`
}

type Cells = readonly [string, number, string, string, number, string, string, string, string, string, string, string?]

function rowsOf(answer: unknown, siteId: string): LinkAndBefore[] {
  const [row] = answer as readonly { readonly page: string | null }[]
  return (JSON.parse(row?.page ?? '[]') as Cells[]).map((cells) => {
    const [id, position, valveId, kind, version, takenAt, receivedAt, personId, device, body, hash, before = ''] = cells
    const times = { takenAt: new Date(takenAt), receivedAt: new Date(receivedAt) }
    return { id, siteId, position, valveId, kind, version, ...times, personId, device, body, hash, before }
  })
}
