import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { registerKeepers } from './roles.ts'
import { text } from './text.ts'

/** A place of the IANA time zone database: days and weeks of the site are counted there. */
export const TimeZone = z.string().trim().refine(isTimeZone, 'Time zone: a place such as Europe/London')

export const SiteInput = z.strictObject({
  name: text(80, 1),
  timeZone: TimeZone,
  /** First day of the next planned stop: forecasts say how likely the travel is used up before it. */
  nextStopOn: z.iso.date().nullable(),
})
export type SiteInput = z.infer<typeof SiteInput>

export const Site = z.object({ siteId: z.uuid(), name: z.string(), timeZone: z.string(), nextStopOn: z.iso.date().nullable() })

export const changeSite = endpoint({
  method: 'PUT',
  path: '/api/site',
  who: registerKeepers,
  body: SiteInput,
  ok: Site,
  status: 200,
})

function isTimeZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== ''
  } catch {
    return false
  }
}
