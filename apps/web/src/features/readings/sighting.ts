import type { DutyState, LeakGrade, StemPosition } from '@glandkeeper/contract/events'
import type { z } from 'zod'
import type { Meter } from './kept-meter.ts'

/** What may be said of a leak beside its word. Null or empty is not said, and is not sent. */
export interface Sighting extends Meter {
  readonly dropsPerMinute: number | null
  /** Length in m. */
  readonly plume: number | null
  /** As through a round hole so wide, in mm. */
  readonly opening: number | null
  /** In ppmv, as the meter showed it. */
  readonly screeningValue: number | null
  /** In ppmv, away from the valve. */
  readonly background: number | null
  readonly isPegged: boolean
  readonly stemPosition: z.infer<typeof StemPosition> | null
  readonly duty: z.infer<typeof DutyState> | null
}

export const noSighting: Sighting = {
  dropsPerMinute: null,
  plume: null,
  opening: null,
  screeningValue: null,
  background: null,
  isPegged: false,
  instrument: '',
  calibratedOn: '',
  stemPosition: null,
  duty: null,
}

const figure = (value: number | null) => value ?? undefined
const words = (text: string) => (text.trim() === '' ? undefined : text)

/** What the eye sees belongs to a leak that is seen, what is said of a meter to its reading: a meter may find what no eye does. */
export function sightingFacts(sighting: Sighting, leak: LeakGrade | null) {
  const { dropsPerMinute, plume, opening, screeningValue, background, isPegged, instrument, calibratedOn } = sighting
  return {
    ...(leak !== 'dry' && { dropsPerMinute: figure(dropsPerMinute), plume: figure(plume), opening: figure(opening) }),
    ...(screeningValue !== null && {
      screeningValue,
      background: figure(background),
      isPegged: isPegged || undefined,
      instrument: words(instrument),
      calibratedOn: words(calibratedOn),
    }),
    stemPosition: sighting.stemPosition ?? undefined,
    duty: sighting.duty ?? undefined,
  }
}

/** Whether anything is said beside the word. */
export function isSaidMore(sighting: Sighting, leak: LeakGrade | null): boolean {
  return Object.values(sightingFacts(sighting, leak)).some((value) => value !== undefined)
}

/** What belongs to a reading of the meter that nobody gave. */
export function missingReading({ screeningValue, background, isPegged }: Sighting): string | null {
  if (screeningValue !== null || (background === null && !isPegged)) return null
  return 'Give the screening value: background and the end of the meter belong to it.'
}

/** Possible, but so odd that it is asked about. */
export function oddReading({ screeningValue, background }: Sighting): string | null {
  if (screeningValue === null || background === null || background <= screeningValue) return null
  return `The background, ${background} ppmv, is above what the meter showed at the valve.`
}
