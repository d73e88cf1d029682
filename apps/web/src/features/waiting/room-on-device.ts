const MEGABYTE = 1024 * 1024

export interface RoomOnDevice {
  readonly isPromised: boolean
  /** Null where the browser does not say. */
  readonly freeMegabytes: number | null
}

/** Asks the browser to keep what is here, and how much more it would take. Without a secure page it promises nothing. */
export async function roomOnDevice(): Promise<RoomOnDevice> {
  if (!('storage' in navigator)) return { isPromised: false, freeMegabytes: null }
  const isPromised = (await navigator.storage.persisted()) || (await navigator.storage.persist())
  const { quota, usage } = await navigator.storage.estimate()
  const free = quota === undefined ? null : Math.max(0, Math.floor((quota - (usage ?? 0)) / MEGABYTE))
  return { isPromised, freeMegabytes: free }
}
