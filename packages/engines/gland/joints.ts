import { type Degree, degrees } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { firstNotCount } from './dimensions.ts'

export interface JointPosition {
  /** 1 is the first ring in, at the bottom of the box. */
  readonly ring: number
  /** Clockwise from 12 as seen from the follower, 0 to below 360. */
  readonly angle: Degree
  /** To the nearest half hour: `12`, `3`, `1:30`. */
  readonly clock: string
}

export type JointFinding =
  | {
      readonly code: 'joints/neighbours-too-close'
      readonly severity: 'warning'
      readonly apart: Degree
      readonly detail: string
    }
  | { readonly code: 'joints/line-up'; readonly severity: 'info'; readonly everyRings: number; readonly detail: string }

/** Joints of neighbours lie at least this far apart. */
export const LEAST_STAGGER = degrees(90)
/** Joints nearer than this line up: half an hour on the clock. Set by us. */
const LINED_UP = 15
/** Dust of a sum of angles, in degrees. */
const ANGLE_DUST = 1e-9

/**
 * Where the joints of a set go, ring 1 first in at 12.
 *
 *     angle of ring k = (k - 1) · stagger, less whole turns     °
 *
 * Findings: a warning where two neighbours are less than 90° apart either way round; a note where the joint over
 * the next ring but one lines up with its own, as at 180°, for then one ring only stands between them.
 *
 * @source SRC-115 stagger of 90 to 180 degrees · SRC-116 what lines up, set by us (docs/sources.md)
 * @returns positions in the order the rings go in, how far neighbours are apart (null for one ring), and findings
 * @example jointPositions({ rings: 4, stagger: degrees(90) }).joints[3] // → { ring: 4, angle: 270, clock: '9' }
 * @example jointPositions({ rings: 3, stagger: degrees(120) }).joints[2].clock // → '8'
 */
export function jointPositions(input: {
  readonly rings: number
  readonly stagger: Degree
}): Outcome<{ joints: readonly JointPosition[]; neighboursApart: Degree | null; findings: readonly JointFinding[] }> {
  const { rings, stagger } = input
  const fault = firstNotCount({ rings })
  if (fault) return fault
  if (!(stagger > 0 && stagger < 360)) {
    return refuse('joints/stagger-out-of-range', 'stagger', `the stagger must be above 0 and below 360 degrees, not ${stagger}`)
  }
  const joints = Array.from({ length: rings }, (_, index) => {
    const angle = (index * stagger) % 360
    return { ring: index + 1, angle: degrees(angle), clock: clockOf(angle) }
  })
  const neighboursApart = rings < 2 ? null : degrees(apart(stagger))
  return { ok: true, joints, neighboursApart, findings: [...tooClose(neighboursApart), ...linedUp(rings, stagger)] }
}

function tooClose(neighboursApart: Degree | null): JointFinding[] {
  if (neighboursApart === null || !(neighboursApart < LEAST_STAGGER - ANGLE_DUST)) return []
  const detail = `joints of neighbouring rings are ${Number(neighboursApart.toFixed(1))} degrees apart, less than ${LEAST_STAGGER}`
  return [{ code: 'joints/neighbours-too-close', severity: 'warning', apart: neighboursApart, detail }]
}

function linedUp(rings: number, stagger: Degree): JointFinding[] {
  if (rings < 3 || !(apart((2 * stagger) % 360) < LINED_UP)) return []
  const detail = 'joints of every second ring line up: one ring stands between them'
  return [{ code: 'joints/line-up', severity: 'info', everyRings: 2, detail }]
}

/** The nearer way round. */
function apart(angle: number): number {
  return Math.min(angle, 360 - angle)
}

/** An hour is 30 degrees. */
function clockOf(angle: number): string {
  const halfHours = Math.round(angle / 15)
  const hour = Math.floor(halfHours / 2) || 12
  return halfHours % 2 === 0 ? `${hour}` : `${hour}:30`
}
