import Database from 'better-sqlite3'

/**
 * Holds a SQLite register for one server. The lock is the operating system's, by way of SQLite, in a file beside
 * the register: it goes with the process, however the process ends.
 *
 * @returns gives the register back
 * @throws when another server holds it
 */
export function holdRegister(file: string): () => void {
  const lock = new Database(`${file}.lock`, { timeout: 0 })
  try {
    lock.exec('BEGIN EXCLUSIVE')
  } catch (error) {
    lock.close()
    throw new Error(`another server is using ${file}: stop it first, or give this one a folder of its own in GLANDKEEPER_DATA`, {
      cause: error,
    })
  }
  return () => lock.close()
}

/** Any number of ours: servers that start together on one PostgreSQL wait here for each other. */
const START_LOCK = 418_0002

/** Runs `work` while no other server on the same PostgreSQL is starting. */
export async function oneStartAtATime<T>(url: string, work: () => Promise<T>): Promise<T> {
  const { default: pg } = await import('pg')
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [START_LOCK])
    return await work()
  } finally {
    await client.end()
  }
}
