import type { Prisma } from '../generated/sqlite/client.ts'
import type { SpelledEvent } from './chain.ts'

/** An event as the chain has it. */
export type Link = SpelledEvent & { readonly hash: string }
/** With the hash of the event one place before it; empty where there is none. */
export type LinkAndBefore = Link & { readonly before: string }

/**
 * Reads of the chain alone, each event one text of JSON: cell by cell a million of them would take Prisma twice as long,
 * and a chain is walked from end to end.
 */
export interface ReadChain {
  /** The events behind a place, in order. */
  behind(siteId: string, position: number, most: number): Promise<Link[]>
  /** Those of these places that are there, in order. */
  at(siteId: string, positions: readonly number[]): Promise<LinkAndBefore[]>
}

type Client = Pick<Prisma.TransactionClient, '$queryRawUnsafe'>

export function readChain(client: Client, provider: 'sqlite' | 'postgresql'): ReadChain {
  const { behind, at } = provider === 'sqlite' ? sqlite : postgresql
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

const columns = 'id position valve_id kind version taken_at received_at person_id device body hash'.split(' ')
const sqlite = queries({
  // As text whatever an altered row holds: JSON refuses bytes, and nobody would hear which row has them.
  cells: columns.map((name) => (name === 'position' || name === 'version' ? `e.${name}` : `CAST(e.${name} AS TEXT)`)),
  array: 'json_array',
  listed: 'SELECT value FROM json_each(?)',
  parameters: ['?', '?', '?'],
})
const postgresql = queries({
  cells: columns.map((name) => (name.endsWith('_at') ? `to_char(e.${name}, 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')` : `e.${name}`)),
  array: 'json_build_array',
  listed: 'SELECT CAST(value AS integer) FROM json_array_elements_text(CAST($2 AS json)) AS places(value)',
  parameters: ['$1', '$2', '$3'],
})

interface Dialect {
  readonly cells: readonly string[]
  readonly array: string
  readonly listed: string
  readonly parameters: readonly [string, string, string]
}

function queries({ cells, array, listed, parameters: [site, behind, most] }: Dialect) {
  const link = (parts: readonly string[]) => `SELECT CAST(${array}(${parts.join(', ')}) AS TEXT) AS link FROM event e`
  const before = 'LEFT JOIN event b ON b.site_id = e.site_id AND b.position = e.position - 1'
  const ofSite = `WHERE e.site_id = ${site} AND e.position`
  return {
    behind: `${link(cells)} ${ofSite} > ${behind} ORDER BY e.position LIMIT ${most}`,
    at: `${link([...cells, "COALESCE(b.hash, '')"])} ${before} ${ofSite} IN (${listed}) ORDER BY e.position`,
  }
}

type Cells = readonly [string, number, string, string, number, string, string, string, string, string, string, string?]

function rowsOf(answer: unknown, siteId: string): LinkAndBefore[] {
  return (answer as readonly { readonly link: string }[]).map(({ link }) => {
    const cells = JSON.parse(link) as Cells
    const [id, position, valveId, kind, version, takenAt, receivedAt, personId, device, body, hash, before = ''] = cells
    const times = { takenAt: spelledTime(takenAt), receivedAt: spelledTime(receivedAt) }
    return { id, siteId, position, valveId, kind, version, ...times, personId, device, body, hash, before }
  })
}

const UTC_AS_SQLITE_HAS_IT = '+00:00'

/** A kept time as it is hashed. What is no time stays as it is, and fits no hash. */
function spelledTime(kept: string): string {
  if (kept.endsWith('Z')) return kept
  // Of a million most are so; a Date made of each takes a fifth of the whole proof.
  if (kept.endsWith(UTC_AS_SQLITE_HAS_IT)) return `${kept.slice(0, -UTC_AS_SQLITE_HAS_IT.length)}Z`
  const time = new Date(kept)
  return Number.isNaN(time.getTime()) ? kept : time.toISOString()
}
