import type { Gland as GlandContract } from '@glandkeeper/contract/glands'
import type { Gland } from '@glandkeeper/engines/gland/gland'
import type { Millimetre } from '@glandkeeper/units/quantity'
import type { ValveModel } from '../../generated/sqlite/models.ts'

/** Checked by the contract when it was written: only the brand of its unit is missing. */
const orNull = (value: number | null) => value as Millimetre | null

/** The columns of a gland in the terms of the contract: units leave the names and enter the types. */
export function glandOfRow(row: ValveModel): GlandContract {
  return {
    boxBore: orNull(row.boxBoreMm),
    stemDiameter: orNull(row.stemDiameterMm),
    boxDepth: orNull(row.boxDepthMm),
    followerKind: row.followerKind as GlandContract['followerKind'],
    noseLength: orNull(row.noseLengthMm),
    leastEngagement: row.leastEngagementMm as GlandContract['leastEngagement'],
    keepClear: row.keepClearMm as GlandContract['keepClear'],
    studThread: row.studThread,
    studCount: row.studCount,
    studGrade: row.studGrade as GlandContract['studGrade'],
    lubrication: row.lubrication as GlandContract['lubrication'],
  }
}

/** What the arithmetic needs of it. */
export function glandForEngines({
  boxBore,
  stemDiameter,
  boxDepth,
  noseLength,
  leastEngagement,
  keepClear,
  studThread,
}: GlandContract): Gland {
  return { boxBore, stemDiameter, boxDepth, noseLength, leastEngagement, keepClear, studThread }
}
