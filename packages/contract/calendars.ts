import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { registerKeepers } from './roles.ts'

const AddressId = z.uuid()

/** A secret address under which a calendar program reads rounds without a sign-in. */
export const CalendarAddress = z.object({
  addressId: AddressId,
  /** Whose rounds it shows; null shows all of the site. */
  crewId: z.uuid().nullable(),
  crewName: z.string().nullable(),
  madeBy: z.string(),
  madeAt: z.iso.datetime(),
})
export type CalendarAddress = z.infer<typeof CalendarAddress>

/** Addresses that work, the oldest first. What they are nobody can say: only a hash is kept. */
export const listCalendarAddresses = endpoint({
  method: 'GET',
  path: '/api/calendars',
  who: registerKeepers,
  ok: z.object({ addresses: z.array(CalendarAddress) }),
  status: 200,
})

/** The only answer that holds the address itself: `/calendar/` and what follows, on the server asked. */
export const makeCalendarAddress = endpoint({
  method: 'POST',
  path: '/api/calendars',
  who: registerKeepers,
  body: z.strictObject({ crewId: z.uuid().nullable() }),
  ok: CalendarAddress.extend({ path: z.string() }),
  status: 201,
})

/** From now on the address is answered like one that never was. */
export const retireCalendarAddress = endpoint({
  method: 'POST',
  path: '/api/calendars/:addressId/retire',
  who: registerKeepers,
  params: z.strictObject({ addressId: AddressId }),
  ok: z.object({ retired: z.literal(true) }),
  status: 200,
})

/** Rounds to walk, and those closed in the last eight weeks, as a calendar (RFC 5545). */
export const readCalendar = endpoint({
  method: 'GET',
  path: '/calendar/:token.ics',
  who: 'anyone',
  params: z.strictObject({ token: z.string() }),
  ok: z.string(),
  okKind: 'calendar',
  status: 200,
})
