import type { FieldEvent } from '@glandkeeper/contract/events'
import { type Ppmv, ppmv } from '@glandkeeper/units/quantity'

type Sighting = Extract<FieldEvent, { kind: 'leak.seen' }>

/**
 * What a meter showed above background; null where none was held to it. Of a meter at the end of its range it is that end,
 * whatever the background: what leaks is more.
 */
export function netScreening(said: Pick<Sighting, 'screeningValue' | 'background' | 'isPegged'>): Ppmv | null {
  const { screeningValue, background = 0, isPegged = false } = said
  if (screeningValue === undefined) return null
  return ppmv(isPegged ? screeningValue : Math.max(0, screeningValue - background))
}
