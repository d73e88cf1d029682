import { createHash, randomBytes } from 'node:crypto'
import type { CalendarAddress } from '@glandkeeper/contract/calendars'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read, Write } from '../../platform/store.ts'
import { crewOf } from '../crews/index.ts'

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
  me: Pick<SignedIn, 'siteId' | 'personId'>,
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
  return { ...presentAddress(row), path: `/calendar/${token}.ics` }
}

export async function retireAddress(write: Write, siteId: string, addressId: string, now: Date): Promise<void> {
  const where = { id: addressId, siteId, retiredAt: null }
  const { count } = await write.calendarAddress.updateMany({ where, data: { retiredAt: now } })
  if (count === 0) throw new Refusal('calendar/unknown', addressId)
}

/**
 * What a token opens. One that is retired is looked for and missed just as one that never was: neither words nor
 * time tell them apart, and how long a look takes says something of the hash only, which leads back to no token.
 */
export async function openedBy(read: Read, token: string) {
  const address = await read.calendarAddress.findFirst({
    where: { tokenHash: hashed(token), retiredAt: null },
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
