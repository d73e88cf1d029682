import type { Prisma, PrismaClient } from '../generated/sqlite/client.ts'
import { type ReadChain, readChain } from './chain-rows.ts'
import { type BulkRow, type BulkTable, insertRows } from './insert-rows.ts'
import { WriteGate } from './write-gate.ts'

/** One transaction: everything done through it is kept together or not at all. */
export type Write = Prisma.TransactionClient & {
  /** Many rows at once, where createMany would be slow. */
  readonly insertRows: (table: BulkTable, rows: readonly BulkRow[]) => Promise<void>
}

type Model =
  | 'site'
  | 'area'
  | 'person'
  | 'session'
  | 'valve'
  | 'event'
  | 'valveState'
  | 'registerChange'
  | 'importRun'
  | 'wearFit'
  | 'forecastMade'
  | 'round'
  | 'roundStop'
  | 'crew'
  | 'daysOff'
  | 'roundPlan'
  | 'plannedVisit'
  | 'visitPin'
  | 'calendarAddress'
  | 'photo'
  | 'outage'
  | 'repackPlan'
  | 'plannedRepack'
  | 'repackPin'
  | 'stockItem'
  | 'stockLot'
  | 'stockMovement'
  | 'leak'
  | 'leakStudy'
  | 'leakRule'
  | 'valveMonitoring'
  | 'siteKey'
  | 'chainSeal'
type ReadMethod = 'findMany' | 'findFirst' | 'findUnique' | 'findUniqueOrThrow' | 'count' | 'groupBy' | 'aggregate'
/** What reads see: committed data only, through a connection that cannot write. */
export type Read = { readonly [M in Model]: Pick<PrismaClient[M], ReadMethod> }

type Provider = 'sqlite' | 'postgresql'

/**
 * The register. The only importer of the Prisma client, so that no write goes past `write`
 * and no read sees what another request has not committed.
 */
export interface Store {
  readonly provider: Provider
  readonly read: Read
  readonly chain: ReadChain
  /**
   * Runs one transaction. Await nothing in it but the transaction itself: every other write waits.
   * Throws Refusal `store/busy` when too many wait already.
   */
  write<T>(work: (write: Write) => Promise<T>): Promise<T>
  close(): Promise<void>
}

const MOST_WAITING = 500
/** Any number of ours; Prisma's migrations use another. */
const WRITE_LOCK = 418_0001
/** Below this, two connections can corrupt a WAL database: sqlite.org/wal.html#walresetbug. */
const LEAST_SQLITE = [3, 51, 3]
const TRANSACTION = { maxWait: 20_000, timeout: 60_000 }

/** Opens a register that has been migrated: `file:…` is SQLite, `postgres…` is PostgreSQL. */
export function openStore(url: string): Promise<Store> {
  return url.startsWith('postgres') ? openPostgresql(url) : openSqlite(url)
}

/** The reading half of a store. */
export type Reader = Pick<Store, 'read' | 'chain' | 'close'>

/** Only the reading half, for a worker thread that computes and never writes. */
export async function openReader(url: string): Promise<Reader> {
  const provider = url.startsWith('postgres') ? 'postgresql' : 'sqlite'
  const read = provider === 'postgresql' ? await postgresqlReader(url) : await sqliteReader(url)
  return { read, chain: readChain(read, provider), close: () => read.$disconnect() }
}

async function sqliteReader(url: string): Promise<PrismaClient> {
  const [{ PrismaBetterSqlite3 }, { PrismaClient: Client }] = await Promise.all([
    import('@prisma/adapter-better-sqlite3'),
    import('../generated/sqlite/client.ts'),
  ])
  const reader = new Client({ adapter: new PrismaBetterSqlite3({ url, timeout: 5000, readonly: true }) })
  await reader.$queryRaw`SELECT 1`
  return reader
}

async function postgresqlReader(url: string): Promise<PrismaClient> {
  const [{ PrismaPg }, { PrismaClient: Client }] = await Promise.all([
    import('@prisma/adapter-pg'),
    import('../generated/postgresql/client.ts'),
  ])
  const adapter = new PrismaPg({ connectionString: url, max: 10, options: '-c default_transaction_read_only=on' })
  const reader = new Client({ adapter }) as unknown as PrismaClient
  await reader.$queryRaw`SELECT 1`
  return reader
}

async function openSqlite(url: string): Promise<Store> {
  const [{ PrismaBetterSqlite3 }, { PrismaClient: Client }] = await Promise.all([
    import('@prisma/adapter-better-sqlite3'),
    import('../generated/sqlite/client.ts'),
  ])
  const writing = new PrismaBetterSqlite3({ url, timeout: 5000 })
  const connect = writing.connect.bind(writing)
  writing.connect = async () => {
    const connection = await connect()
    // FULL: an acknowledged entry outlives a power cut. NORMAL would lose the last ones.
    await connection.executeScript('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;')
    return connection
  }
  const writer = new Client({ adapter: writing, transactionOptions: TRANSACTION })
  await assertSqliteIsSafe(writer)
  const reader = await sqliteReader(url)
  const gate = new WriteGate(MOST_WAITING)
  return {
    provider: 'sqlite',
    read: reader,
    chain: readChain(reader, 'sqlite'),
    write: (work) => gate.pass(() => writer.$transaction((tx) => work(asWrite(tx, 'sqlite')))),
    close: async () => {
      await gate.pass(async () => {})
      await reader.$disconnect()
      await writer.$disconnect()
    },
  }
}

async function openPostgresql(url: string): Promise<Store> {
  const [{ PrismaPg }, { PrismaClient: Client }] = await Promise.all([
    import('@prisma/adapter-pg'),
    import('../generated/postgresql/client.ts'),
  ])
  // The SQLite client has the narrower types: what compiles against it runs on both.
  const adapter = new PrismaPg({ connectionString: url, max: 10 })
  const writer = new Client({ adapter, transactionOptions: TRANSACTION }) as unknown as PrismaClient
  await writer.$queryRaw`SELECT 1`
  const reader = await postgresqlReader(url)
  const gate = new WriteGate(MOST_WAITING)
  return {
    provider: 'postgresql',
    read: reader,
    chain: readChain(reader, 'postgresql'),
    // What one write has read, another may not change: within this server by the gate, between servers by a lock
    // that every write takes and the end of its transaction gives back.
    write: (work) =>
      gate.pass(() =>
        writer.$transaction(async (tx) => {
          await tx.$executeRawUnsafe(`SELECT pg_advisory_xact_lock(${WRITE_LOCK})`)
          return work(asWrite(tx, 'postgresql'))
        }),
      ),
    close: async () => {
      await reader.$disconnect()
      await writer.$disconnect()
    },
  }
}

/** Prisma's transaction is a proxy that cannot be added to; this one adds the bulk insert in front of it. */
function asWrite(tx: Prisma.TransactionClient, provider: Provider): Write {
  const insert: Write['insertRows'] = (table, rows) => insertRows(tx, provider, table, rows)
  return new Proxy(tx, {
    get: (target, name) => (name === 'insertRows' ? insert : (Reflect.get(target, name) as unknown)),
  }) as Write
}

async function assertSqliteIsSafe(client: PrismaClient): Promise<void> {
  const one = async (sql: string) => {
    const rows = await client.$transaction((tx) => tx.$queryRawUnsafe<Record<string, unknown>[]>(sql))
    return Object.values(rows[0] ?? {})[0]
  }
  const version = String(await one('SELECT sqlite_version()'))
  if (isOlder(version.split('.').map(Number), LEAST_SQLITE))
    throw new Error(`SQLite ${version} is too old: ${LEAST_SQLITE.join('.')} or newer is needed`)
  const mode = await one('PRAGMA journal_mode')
  if (mode !== 'wal') throw new Error(`the journal mode is ${String(mode)}, not WAL: is the data folder on a network drive?`)
  if (Number(await one('PRAGMA synchronous')) !== 2) throw new Error('SQLite does not write with synchronous = FULL')
  const check = await one('PRAGMA quick_check')
  if (check !== 'ok') throw new Error(`the register is damaged (${String(check)}): restore the last good backup`)
}

function isOlder(version: readonly number[], least: readonly number[]): boolean {
  const differs = least.findIndex((part, index) => (version[index] ?? 0) !== part)
  return differs >= 0 && (version[differs] ?? 0) < (least[differs] ?? 0)
}
