import { createHash, randomBytes } from 'node:crypto'
import type { CalendarAddress } from '@glandkeeper/contract/calendars'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { crewOf } from '../crews/index.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

const shown = { crew: { select: { name: true } }, madeBy: { select: { name: true } } } as const

interface AddressRow {
  readonly id: string
  readonly crewId: string | null
  readonly crew: { readonly name: string } | null
  readonly madeBy: { readonly name: string }
  readonly madeAt: Date
}

export async function addressesOf(read: Read, siteId: string): Promise<CalendarAddress[]> {
  const rows = await read.calendarAddress.findMany({
    where: { siteId, retiredAt: null },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
    include: shown,
  })
  return rows.map(presentAddress)
}

/** Makes an address that nobody can guess. Its token leaves this function once, and is kept as a hash. */
export async function makeAddress(
  write: Write,
  me: By,
  crewId: string | null,
  now: Date,
): Promise<CalendarAddress & { readonly path: string }> {
  const { siteId } = me
  if (crewId !== null) await crewOf(write, siteId, crewId)
  const token = randomBytes(32).toString('base64url')
  const row = await write.calendarAddress.create({
    data: { id: newId(), siteId, crewId, tokenHash: hashed(token), madeById: me.personId, madeAt: now },
    include: shown,
  })
  await note(write, me, { id: row.id, what: 'calendar address made', crewName: row.crew?.name ?? null }, now)
  return { ...presentAddress(row), path: `/calendar/${token}.ics` }
}

export async function retireAddress(write: Write, me: By, addressId: string, now: Date): Promise<void> {
  const where = { id: addressId, siteId: me.siteId, retiredAt: null }
  const row = await write.calendarAddress.findFirst({ where, include: shown })
  if (!row) throw new Refusal('calendar/unknown', addressId)
  await write.calendarAddress.update({ where: { id: addressId }, data: { retiredAt: now } })
  await note(write, me, { id: addressId, what: 'calendar address retired', crewName: row.crew?.name ?? null }, now)
}

interface Noted {
  readonly id: string
  readonly what: string
  readonly crewName: string | null
}

/** Whose calendar, and never its secret. */
function note(write: Write, me: By, { id, what, crewName }: Noted, now: Date): Promise<void> {
  const shows = crewName ?? 'the whole site'
  return noteChange(write, me, { subject: 'calendar', subjectId: id, what, before: {}, after: { shows } }, now)
}

/**
 * What a token opens: nothing any more once its crew is retired. One that is retired is looked for and missed just as one that never was: neither words nor
 * time tell them apart, and how long a look takes says something of the hash only, which leads back to no token.
 */
export async function openedBy(read: Read, token: string) {
  const address = await read.calendarAddress.findFirst({
    where: { tokenHash: hashed(token), retiredAt: null, OR: [{ crewId: null }, { crew: { retiredAt: null } }] },
    select: { siteId: true, crewId: true, crew: { select: { name: true } }, site: { select: { name: true, timeZone: true } } },
  })
  if (!address) throw new Refusal('calendar/unknown')
  return address
}

function presentAddress({ id, crewId, crew, madeBy, madeAt }: AddressRow): CalendarAddress {
  return { addressId: id, crewId, crewName: crew?.name ?? null, madeBy: madeBy.name, madeAt: madeAt.toISOString() }
}

function hashed(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}
