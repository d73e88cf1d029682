import type { Gland as GlandContract } from '@glandkeeper/contract/glands'
import type { Gland } from '@glandkeeper/engines/gland/gland'
import type { ValveModel } from '../../generated/sqlite/models.ts'

const orNull = <T>(value: number | null) => value as T | null

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
export function glandForEngines({ boxBore, stemDiameter, boxDepth, noseLength, leastEngagement, keepClear, studThread }: GlandContract): Gland {
  return { boxBore, stemDiameter, boxDepth, noseLength, leastEngagement, keepClear, studThread }
}
