import type { FieldEvent } from '@glandkeeper/contract/events'
import type { Problem } from '@glandkeeper/contract/problem'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

/**
 * An entry on this device that the server has not confirmed. Only two states are ever written down: an entry that was
 * on its way when the device went dark is simply still waiting.
 */
export interface OutboxEntry {
  /** The order in which entries were made on this device. */
  readonly n: number
  readonly event: FieldEvent
  /** Who made it: it is sent only while that person is signed in. */
  readonly personId: string
  readonly tag: string
  /** In words, for the lists on this device. */
  readonly says: string
  readonly state: 'waiting' | 'refused'
  /** Why the server refused it, or could not take it the last time. */
  readonly problem: Problem | null
}

export type NewEntry = Pick<OutboxEntry, 'event' | 'personId' | 'tag' | 'says'>

/** A picture that an entry names, kept until the server has it. */
export interface OutboxPhoto {
  readonly digest: string
  readonly personId: string
  readonly content: Uint8Array<ArrayBuffer>
  readonly thumbnail: Uint8Array<ArrayBuffer>
  readonly problem: Problem | null
}

interface Field extends DBSchema {
  entries: { key: number; value: OutboxEntry; indexes: { id: string } }
  photos: { key: string; value: OutboxPhoto }
}

export type OutboxDatabase = IDBPDatabase<Field>

/** Beside every cache and never cleared with one. A new version keeps what is there. */
export function openOutbox(name = 'glandkeeper-outbox'): Promise<OutboxDatabase> {
  return openDB<Field>(name, 1, {
    upgrade(database) {
      database.createObjectStore('entries', { keyPath: 'n', autoIncrement: true }).createIndex('id', 'event.id', { unique: true })
      database.createObjectStore('photos', { keyPath: 'digest' })
    },
  })
}

/** On the disk of the device before the screen may say so. */
const strictly = { durability: 'strict' } as const

/** All entries of one visit and their pictures, or none of them. */
export async function addEntries(
  database: OutboxDatabase,
  entries: readonly NewEntry[],
  photos: readonly OutboxPhoto[] = [],
): Promise<void> {
  const writing = database.transaction(['entries', 'photos'], 'readwrite', strictly)
  for (const entry of entries)
    void writing.objectStore('entries').add({ ...entry, state: 'waiting', problem: null } as OutboxEntry)
  for (const photo of photos) void writing.objectStore('photos').put(photo)
  await writing.done
}

export function entriesIn(database: OutboxDatabase): Promise<OutboxEntry[]> {
  return database.getAll('entries')
}

export function photosIn(database: OutboxDatabase): Promise<OutboxPhoto[]> {
  return database.getAll('photos')
}

export interface Judged {
  /** The server has these. */
  readonly taken: readonly number[]
  /** These go no further by themselves; `refused` until a person has looked at them. */
  readonly kept: readonly OutboxEntry[]
}

/** What became of entries that were sent, in one transaction. */
export async function settle(database: OutboxDatabase, { taken, kept }: Judged): Promise<void> {
  const writing = database.transaction('entries', 'readwrite', strictly)
  for (const n of taken) void writing.store.delete(n)
  for (const entry of kept) {
    // Another tab may have sent it meanwhile: what is gone stays gone.
    if ((await writing.store.get(entry.n)) !== undefined) void writing.store.put(entry)
  }
  await writing.done
}

/** A refused entry, put right by a person, goes back into the queue under its own id: the server never had it. */
export async function putRight(database: OutboxDatabase, entry: OutboxEntry, event: FieldEvent): Promise<void> {
  await settle(database, { taken: [], kept: [{ ...entry, event, state: 'waiting', problem: null }] })
}

/** Only a person removes an entry that was not sent, and only after it was downloaded. */
export async function setAside(database: OutboxDatabase, n: number): Promise<void> {
  await settle(database, { taken: [n], kept: [] })
}

/** The server has it, or a person has downloaded it: off the device. Or why the server refused it. */
export async function settlePhoto(database: OutboxDatabase, photo: OutboxPhoto, problem: Problem | null): Promise<void> {
  const writing = database.transaction('photos', 'readwrite', strictly)
  if (problem === null) void writing.store.delete(photo.digest)
  else void writing.store.put({ ...photo, problem })
  await writing.done
}

/** The server refused it; it waits once more. */
export async function sendPhotoAgain(database: OutboxDatabase, photo: OutboxPhoto): Promise<void> {
  const writing = database.transaction('photos', 'readwrite', strictly)
  void writing.store.put({ ...photo, problem: null })
  await writing.done
}
