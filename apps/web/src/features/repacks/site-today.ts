import { useState } from 'react'
import { atSite } from '../../platform/site-time.ts'
import { useMe } from '../people/index.tsx'

/** The day of the site when the page was opened. */
export function useSiteToday(): Date {
  const { site } = useMe()
  const [today] = useState(() => atSite(new Date(), site.timeZone))
  return today
}
