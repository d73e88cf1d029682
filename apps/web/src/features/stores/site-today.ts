import { format } from 'date-fns'
import { useState } from 'react'
import { atSite } from '../../platform/site-time.ts'
import { useMe } from '../people/index.tsx'

/** The day of the site when the page was opened, as an ISO day. */
export function useSiteToday(): string {
  const { site } = useMe()
  const [today] = useState(() => format(atSite(new Date(), site.timeZone), 'yyyy-MM-dd'))
  return today
}
