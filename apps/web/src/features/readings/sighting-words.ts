import type { LeakGrade } from '@glandkeeper/contract/events'
import { formatMillimetres } from '@glandkeeper/units/format'
import { formatDay } from '../../platform/site-time.ts'
import { type Sighting, sightingFacts } from './sighting.ts'

/** On the fold: what is set under it stays in sight. */
export function moreInWords(sighting: Sighting, leak: LeakGrade | null): string {
  const { plume, opening, background, isPegged, instrument, calibratedOn, stemPosition, duty } = sightingFacts(sighting, leak)
  const said = [
    plume !== undefined && `plume ${plume}\u00a0m`,
    opening !== undefined && `hole ${formatMillimetres(opening)}`,
    background !== undefined && `background ${background}\u00a0ppmv`,
    isPegged && 'meter at its end',
    instrument,
    calibratedOn !== undefined && `calibrated ${formatDay(calibratedOn)}`,
    stemPosition && `stem ${stemPosition}`,
    duty && `line ${duty}`,
  ].filter(Boolean)
  return said.length === 0 ? 'More about the leak' : `More about the leak: ${said.join(', ')}`
}
