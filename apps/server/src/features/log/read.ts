import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import { ChangeSubject, type exportLog, type LogRow, type showLog } from '@glandkeeper/contract/log'
import type { RegisterChangeModel } from '../../generated/sqlite/models.ts'
import { periodOf } from '../../platform/period.ts'
import { fieldChanges } from '../../platform/register-change.ts'
import type { Read, Store } from '../../platform/store.ts'
import { MOST_SUBJECTS, subjectNames } from './names.ts'

export type Filters = QueryOf<typeof exportLog>
type ChangeRow = RegisterChangeModel & { readonly person: { readonly name: string } }

const withPerson = { person: { select: { name: true } } }
const newestFirst = [{ at: 'desc' as const }, { id: 'desc' as const }]

/** One page of the log, how long it is, and whose changes it can be narrowed to. */
export async function logPage(store: Store, siteId: string, query: QueryOf<typeof showLog>): Promise<OkIn<typeof showLog>> {
  const { offset: skip, limit: take, ...filters } = query
  const { read } = store
  const where = await changesThat(store, siteId, filters)
  const [total, rows, people] = await Promise.all([
    read.registerChange.count({ where }),
    read.registerChange.findMany({ where, include: withPerson, orderBy: newestFirst, skip, take }),
    read.person.findMany({ where: { siteId }, select: { id: true, name: true }, orderBy: [{ name: 'asc' }, { id: 'asc' }] }),
  ])
  return {
    total,
    rows: await logRows(read, siteId, rows),
    people: people.map(({ id: personId, name }) => ({ personId, name })),
  }
}

export async function countOf(store: Store, siteId: string, filters: Filters): Promise<number> {
  return store.read.registerChange.count({ where: await changesThat(store, siteId, filters) })
}

/** The whole log in pages, the newest first; what is noted meanwhile is not in it. */
export async function* wholeLog(store: Store, siteId: string, filters: Filters): AsyncGenerator<LogRow[]> {
  const where = await changesThat(store, siteId, filters)
  let last: ChangeRow | undefined
  for (;;) {
    const behind = last && { OR: [{ at: { lt: last.at } }, { at: last.at, id: { lt: last.id } }] }
    const rows: ChangeRow[] = await store.read.registerChange.findMany({
      where: behind ? { AND: [where, behind] } : where,
      include: withPerson,
      orderBy: newestFirst,
      take: MOST_SUBJECTS,
    })
    if (rows.length > 0) yield await logRows(store.read, siteId, rows)
    if (rows.length < MOST_SUBJECTS) return
    last = rows.at(-1)
  }
}

async function changesThat({ read, provider }: Store, siteId: string, { subject, person, from, to, find }: Filters) {
  const { timeZone } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
  const at = periodOf({ from, to }, timeZone)
  const holds = (text: string) => ({
    contains: asLookedFor(text, provider),
    ...(provider === 'postgresql' && { mode: 'insensitive' }),
  })
  const words = find?.split(/\s+/).filter((word) => word !== '') ?? []
  const hasWord = (word: string) => {
    const inJson = JSON.stringify(word).slice(1, -1)
    return { OR: [{ what: holds(word) }, { before: holds(inJson) }, { after: holds(inJson) }] }
  }
  const valve = find === undefined ? null : await valveCalled(read, siteId, find)
  const found = words.length > 0 && {
    OR: [{ AND: words.map(hasWord) }, ...(valve ? [{ subject: { in: ['valve', 'monitoring'] }, subjectId: valve.id }] : [])],
  }
  return { siteId, ...(subject && { subject }), ...(person && { personId: person }), ...(at && { at }), ...found }
}

/** SQLite looks past capitals by itself, and a stroke is a letter to it; PostgreSQL must be told both. */
function asLookedFor(text: string, provider: Store['provider']): string {
  return provider === 'postgresql' ? text.replaceAll('\\', '\\\\') : text
}

/** A tag is what people look for most, and stands in few of the changes themselves. */
function valveCalled(read: Read, siteId: string, find: string): Promise<{ id: string } | null> {
  return read.valve.findFirst({ where: { siteId, tag: { in: [find, find.toUpperCase()] } }, select: { id: true } })
}

async function logRows(read: Read, siteId: string, rows: readonly ChangeRow[]): Promise<LogRow[]> {
  const nameOf = await subjectNames(read, siteId, rows)
  return rows.map((row) => ({
    id: row.id,
    at: row.at.toISOString(),
    by: row.person.name,
    subject: ChangeSubject.parse(row.subject),
    name: nameOf(row),
    what: row.what,
    changes: fieldChanges(row.before, row.after),
  }))
}
