import { useQuery } from '@tanstack/react-query'
import { format } from 'date-fns'
import { useState } from 'react'
import { atSite } from '../../platform/site-time.ts'
import { useMe } from '../people/index.tsx'
import { boardSummary } from './queries.ts'

export interface Days {
  /** What the chances are counted to; null until the summary has arrived. */
  readonly stopOn: string | null
  /** By the clock of the site. */
  readonly today: string
}

/** The two days that the rows of the board are drawn and worded for. */
export function useDays(): Days & { isPlanned: boolean } {
  const { site } = useMe()
  const { data, dataUpdatedAt } = useQuery(boardSummary)
  const stopOn = data?.stopOn ?? null
  const [opened] = useState(() => Date.now())
  const today = format(atSite(new Date(dataUpdatedAt === 0 ? opened : dataUpdatedAt), site.timeZone), 'yyyy-MM-dd')
  return { stopOn, today, isPlanned: stopOn !== null && site.nextStopOn === stopOn }
}
