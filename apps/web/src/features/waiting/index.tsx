import { useQuery } from '@tanstack/react-query'
import { format } from 'date-fns'
import { Link } from 'react-router'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { atSite } from '../../platform/site-time.ts'
import { useMe } from '../people/index.tsx'
import { useSyncView } from '../pocket/index.tsx'
import { pocketStateQuery } from '../pocket/queries.ts'
import { roomQuery } from './room-on-device.ts'
import { waitingInWords } from './words.ts'
import look from './waiting.module.css'

/** How this device and the register stand to each other, in one soft line. */
export function SyncLine() {
  const { entries, photos, fault, isSignedOut } = useOutbox()
  const { share, isReached, clockAheadMinutes } = useSyncView()
  const state = useQuery(pocketStateQuery)
  const room = useQuery(roomQuery)
  const { timeZone } = useMe().site
  const lastSync = state.data ? format(atSite(new Date(state.data.asOf), timeZone), 'd MMM HH:mm') : null
  const words = waitingInWords({
    waiting: entries.filter((entry) => entry.state === 'waiting').length,
    needYou:
      entries.filter((entry) => entry.state === 'refused').length + photos.filter(({ problem }) => problem !== null).length,
    photos: photos.length,
    lastSync,
    isReached,
    clockAheadMinutes,
    freeMegabytes: room.data?.freeMegabytes ?? null,
    isReading: share !== null && lastSync === null,
    fault,
    isSignedOut,
  })
  return (
    <span role="status" className={look.line}>
      <Link to="/waiting" className={words.needsYou ? look.needsYou : undefined}>
        {words.says}
      </Link>
    </span>
  )
}
