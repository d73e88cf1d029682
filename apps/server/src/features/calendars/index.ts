import { listCalendarAddresses, makeCalendarAddress, readCalendar, retireCalendarAddress } from '@glandkeeper/contract/calendars'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { addressesOf, makeAddress, openedBy, retireAddress } from './addresses.ts'
import { calendarOf } from './feed.ts'
import { siteSettings } from '../settings/index.ts'
import { roundsOfCalendar } from './rounds-of-calendar.ts'

export function calendarRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listCalendarAddresses, async ({ me }) => ({ addresses: await addressesOf(store.read, me.siteId) }))

  route(app, platform, makeCalendarAddress, async ({ body, me, reply }) => {
    // The answer holds a secret.
    void reply.header('cache-control', 'no-store')
    return store.write((write) => makeAddress(write, me, body.crewId, clock()))
  })

  route(app, platform, retireCalendarAddress, async ({ params, me }) => {
    await store.write((write) => retireAddress(write, me, params.addressId, clock()))
    return { retired: true as const }
  })

  route(app, platform, readCalendar, async ({ params, reply }) => {
    const { siteId, crewId, crew, site } = await openedBy(store.read, params.token)
    void reply.header('cache-control', 'private, no-cache')
    const { hourOfSettingOut } = await siteSettings(store.read, siteId)
    const setOutAt = clockAt(hourOfSettingOut)
    const rounds = await roundsOfCalendar(store.read, { siteId, crewId }, clock())
    return calendarOf({ name: `Rounds, ${crew?.name ?? site.name}`, timeZone: site.timeZone, setOutAt, rounds })
  })
}

/** @example clockAt(7.5) // → '07:30' */
function clockAt(hour: number): string {
  const minutes = Math.round(hour * 60)
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':')
}
