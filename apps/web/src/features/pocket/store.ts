import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Round } from '@glandkeeper/contract/rounds'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

/** How far the pocket register is, and whose it is. */
export interface PocketState {
  readonly personId: string
  /** By the clock of the server: what changed since is asked for. */
  readonly asOf: string
  readonly position: number
  /** When everything was read anew: forecasts go on by themselves, so a day later all cards are old. */
  readonly wholeAt: string
}

interface PocketTables extends DBSchema {
  cards: { key: string; value: ValveCard; indexes: { tag: string } }
  rounds: { key: string; value: Round }
  cutCards: { key: string; value: { readonly tag: string; readonly card: CutCard } }
  /** As it came: a page that shows it knows its shape. */
  stock: { key: 'stock'; value: unknown }
  state: { key: 'state'; value: PocketState }
}

export type Pocket = IDBPDatabase<PocketTables>

/** Goes up with every change of what is kept. */
const VERSION = 3

let opened: Promise<Pocket> | null = null

/** A copy of what the server has, apart from the outbox: it may be cleared at any time and loses nothing. */
export function openPocket(): Promise<Pocket> {
  opened ??= openDB<PocketTables>('glandkeeper-pocket', VERSION, {
    upgrade(database) {
      // A copy of an older shape is read anew from the server.
      for (const name of database.objectStoreNames) database.deleteObjectStore(name)
      database.createObjectStore('cards', { keyPath: 'valve.valveId' }).createIndex('tag', 'valve.tag')
      database.createObjectStore('rounds', { keyPath: 'roundId' })
      database.createObjectStore('cutCards', { keyPath: 'tag' })
      for (const name of ['stock', 'state'] as const) database.createObjectStore(name)
    },
    // Another tab has a newer shape: this one lets go, and opens again when it next reads.
    blocking() {
      void opened?.then((pocket) => pocket.close())
      opened = null
    },
  })
  return opened
}

const tables = ['cards', 'rounds', 'cutCards', 'stock', 'state'] as const

/** What one person read is not shown to the next. */
export async function emptyPocket(): Promise<void> {
  const pocket = await openPocket()
  const writing = pocket.transaction(tables, 'readwrite')
  for (const name of tables) void writing.objectStore(name).clear()
  await writing.done
}
