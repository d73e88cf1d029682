import { queryOptions } from '@tanstack/react-query'

const MEGABYTE = 1024 * 1024
/** A round with photos needs some. */
export const LEAST_MEGABYTES = 50

interface RoomOnDevice {
  readonly isPromised: boolean
  /** Null where the browser does not say. */
  readonly freeMegabytes: number | null
}

/** Asks the browser to keep what is here, and how much more it would take. Without a secure page it promises nothing. */
async function roomOnDevice(): Promise<RoomOnDevice> {
  if (!('storage' in navigator)) return { isPromised: false, freeMegabytes: null }
  const isPromised = (await navigator.storage.persisted()) || (await navigator.storage.persist())
  const { quota, usage } = await navigator.storage.estimate()
  const free = quota === undefined ? null : Math.max(0, Math.floor((quota - (usage ?? 0)) / MEGABYTE))
  return { isPromised, freeMegabytes: free }
}

/** Asked at the first page under the shell: before the first entry, a browser may be asked to keep what will be here. */
export const roomQuery = queryOptions({ queryKey: ['room on this device'], queryFn: roomOnDevice, staleTime: 10 * 60_000 })
