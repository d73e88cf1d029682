import { useQuery } from '@tanstack/react-query'
import { LEAST_MEGABYTES, roomQuery } from './room-on-device.ts'

/** Whether the browser has promised to keep what is on this device, and how much room there is. */
export function DeviceKeeps() {
  const room = useQuery(roomQuery)
  if (!room.data) return null
  const { isPromised, freeMegabytes } = room.data
  return (
    <section>
      <h2>What this device keeps</h2>
      {isPromised ? (
        <p>The browser has promised to keep what is on this device until it is sent.</p>
      ) : (
        <p>
          The browser has not promised to keep what is on this device: short of room, or on a page that is not opened for some
          weeks, it may throw it away. Send before the end of the shift, and put the page on the home screen: that usually makes
          the browser keep it.
        </p>
      )}
      {freeMegabytes !== null && (
        <p className={freeMegabytes < LEAST_MEGABYTES ? undefined : 'soft'}>
          {freeMegabytes < LEAST_MEGABYTES
            ? `Only ${freeMegabytes} MB are free for this page: remove pictures or apps before a long round.`
            : `${freeMegabytes} MB are free for this page.`}
        </p>
      )}
    </section>
  )
}
