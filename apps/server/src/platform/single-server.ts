import path from 'node:path'
import Database from 'better-sqlite3'

/**
 * Holds a data folder for one server. The lock is the operating system's, by way of SQLite:
 * it goes with the process, however the process ends.
 *
 * @returns gives the folder back
 * @throws when another server holds it
 */
export function holdDataFolder(dataFolder: string): () => void {
  const lock = new Database(path.join(dataFolder, 'server.lock'), { timeout: 0 })
  try {
    lock.exec('BEGIN EXCLUSIVE')
  } catch (error) {
    lock.close()
    throw new Error(
      `another server is using ${dataFolder}: stop it first, or give this one a folder of its own in GLANDKEEPER_DATA`,
      { cause: error },
    )
  }
  return () => lock.close()
}
