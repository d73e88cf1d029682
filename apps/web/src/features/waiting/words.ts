import { LEAST_MEGABYTES } from './room-on-device.ts'

interface Standing {
  readonly waiting: number
  readonly needYou: number
  readonly photos: number
  /** In words; null while this device has never been read whole. */
  readonly lastSync: string | null
  readonly isReached: boolean
  readonly isReading: boolean
  readonly clockAheadMinutes: number
  /** Null where the browser does not say. */
  readonly freeMegabytes: number | null
  readonly fault: string | null
  readonly isSignedOut: boolean
}

const CLOCK_MAY_DIFFER_MINUTES = 2

/** The line in the header: what is on this device, what needs a person, and how old the rest is. */
export function waitingInWords(standing: Standing): { says: string; needsYou: boolean } {
  const { waiting, needYou, photos, lastSync, isReached, isReading, clockAheadMinutes, freeMegabytes, fault, isSignedOut } =
    standing
  if (fault !== null) return { says: 'this device keeps nothing: entries would be lost', needsYou: true }
  const isClockWrong = Math.abs(clockAheadMinutes) > CLOCK_MAY_DIFFER_MINUTES
  const isFull = freeMegabytes !== null && freeMegabytes < LEAST_MEGABYTES
  const parts = [
    waiting + needYou > 0 && `${waiting + needYou} on this device`,
    photos > 0 && `${photos} ${photos === 1 ? 'photo' : 'photos'}`,
    needYou > 0 && `${needYou} ${needYou === 1 ? 'needs' : 'need'} you`,
    isSignedOut && waiting > 0 && 'sign in to send',
    isReading ? 'reading the register' : lastSync === null ? 'not ready for work without signal' : `last sync ${lastSync}`,
    !isReached && 'no signal',
    isFull && `only ${freeMegabytes} MB free on this device`,
    isClockWrong &&
      `the clock of this device is ${durationInWords(Math.abs(clockAheadMinutes))} ${clockAheadMinutes > 0 ? 'ahead' : 'behind'}`,
  ]
  return {
    says: parts.filter((part) => part !== false).join(', '),
    needsYou: needYou > 0 || isClockWrong || isFull || (isSignedOut && waiting > 0),
  }
}

function durationInWords(minutes: number): string {
  return minutes < 120 ? `${minutes} min` : `${Math.round(minutes / 60)} h`
}
