import type { Gland } from '@glandkeeper/contract/glands'
import { findThread } from '@glandkeeper/engines/threads/stud-threads'

/** What the drawing needs to know, and what of it nobody has measured. */
export type Measure = 'bore' | 'stem' | 'depth' | 'nose' | 'gap left' | 'gap right' | 'stud thread' | 'follower' | 'rings'

export interface DrawnGland {
  readonly bore: number
  readonly stem: number
  readonly depth: number
  readonly nose: number
  readonly gapLeft: number
  readonly gapRight: number
  readonly keepClear: number
  readonly isTwoPiece: boolean
  readonly studDiameter: number
  readonly rings: number
  /** Drawn with a guess, so that there is something to point at. */
  readonly assumed: ReadonlySet<Measure>
  readonly gapIsInferred: boolean
}

export interface Gaps {
  readonly gapLeft: number | null
  readonly gapRight: number | null
  readonly gapIsInferred: boolean
}

/** The gland with a plausible figure wherever one is missing, and the list of those. */
export function drawnGland(gland: Gland, gaps: Gaps, rings: number | null): DrawnGland {
  const assumed = new Set<Measure>()
  const known = (measure: Measure, value: number | null, guess: () => number): number => {
    if (value !== null) return value
    assumed.add(measure)
    return guess()
  }
  const bore = known('bore', gland.boxBore, () => (gland.stemDiameter ?? 28) * 1.6)
  const stem = known('stem', gland.stemDiameter, () => bore * 0.62)
  const depth = known('depth', gland.boxDepth, () => bore)
  const oneSide = gaps.gapLeft ?? gaps.gapRight
  if (gland.followerKind === null) assumed.add('follower')
  const thread = gland.studThread === null ? null : findThread(gland.studThread)
  const gapLeft = known('gap left', gaps.gapLeft, () => oneSide ?? depth * 0.18)
  const gapRight = known('gap right', gaps.gapRight, () => oneSide ?? depth * 0.18)
  return {
    bore,
    stem,
    depth,
    nose: known('nose', gland.noseLength, () => depth * 0.25 + Math.max(gapLeft, gapRight)),
    gapLeft,
    gapRight,
    keepClear: gland.keepClear,
    isTwoPiece: gland.followerKind === 'two-piece',
    studDiameter: known('stud thread', thread?.ok ? thread.thread.nominalDiameter : null, () =>
      Math.min(Math.max(bore * 0.25, 6), 24),
    ),
    rings: known('rings', rings, () => 1),
    assumed,
    gapIsInferred: gaps.gapIsInferred,
  }
}

/** How far the nose has sunk into the box: negative when the follower stands clear of it. */
function entryOfNose(gland: DrawnGland): number {
  return gland.nose - (gland.gapLeft + gland.gapRight) / 2
}

export function heightOfPacking(gland: DrawnGland): number {
  return gland.depth - Math.min(Math.max(entryOfNose(gland), 0), gland.depth)
}

const boxMeasures: readonly Measure[] = ['bore', 'stem', 'depth']

/** True to scale where the box and the stem are measured; a guessed follower is named beside it. */
export function isToScale(gland: DrawnGland): boolean {
  return boxMeasures.every((measure) => !gland.assumed.has(measure))
}

const BY_PROPORTION = 'walls, flange and studs by proportion'

/** One line under the drawing: what may be read off it and what may not. */
export function scaleNote(gland: DrawnGland): string {
  const guessed = ['nose', 'gap left', 'gap right'].filter((measure) => gland.assumed.has(measure as Measure))
  const lines = [isToScale(gland) ? `To scale; ${BY_PROPORTION}.` : `Not to scale: ${listed(missingOfBox(gland))} not measured.`]
  if (isToScale(gland) && guessed.length > 0) lines.push(`The follower is drawn dashed: ${listed(guessed)} not measured.`)
  if (gland.assumed.has('follower')) lines.push('Kind of follower not recorded, drawn in one piece.')
  if (gland.gapIsInferred && guessed.length === 0) lines.push('The follower is drawn dashed: its gap is worked out from turns.')
  if (guessed.length === 0 && entryOfNose(gland) < 0) lines.push('The follower stands clear of the box.')
  if (guessed.length === 0 && entryOfNose(gland) > gland.depth)
    lines.push('By these figures the nose reaches through the box: measure again.')
  return lines.join(' ')
}

/** Which of bore, stem and depth nobody has measured. */
export function missingOfBox(gland: DrawnGland): string[] {
  return boxMeasures.filter((measure) => gland.assumed.has(measure))
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
