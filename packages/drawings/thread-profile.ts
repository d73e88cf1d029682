/** Half of what a metric thread takes off the nominal diameter: its minor diameter with a rounded root, as in SRC-210. */
const METRIC_DEPTH = 0.61343
/** Flat of the crest of metric and unified threads, ISO 68-1, from memory. */
const METRIC_CREST = 1 / 8
const METRIC_FLANK = Math.PI / 6
/** SRC-212. */
const WHITWORTH_DEPTH = 0.640327
const WHITWORTH_FLANK = (27.5 * Math.PI) / 180

/** Depth of a thread in pitches. A unified one is drawn as a metric one: the two differ at the root only. */
export function threadDepth(isWhitworth: boolean): number {
  return isWhitworth ? WHITWORTH_DEPTH : METRIC_DEPTH
}

export interface ProfileToDraw {
  /** The side of the core that is away from the crests; crests end at `edge`. Px. */
  readonly core: number
  readonly edge: number
  readonly top: number
  readonly crests: number
  readonly pitch: number
  readonly isWhitworth: boolean
}

/** An outline of half a stud, from the middle of a root down to the middle of a root. */
export function threadProfile({ core, edge, top, crests, pitch, isWhitworth }: ProfileToDraw): string {
  const root = edge - threadDepth(isWhitworth) * pitch
  const bottom = top + crests * pitch
  const turns = Array.from({ length: crests }, (_, crest) => {
    const at: At = (depth, along) => `${px(edge - depth * pitch)} ${px(top + (crest + 0.5 + along) * pitch)}`
    return isWhitworth ? roundedCrest(at, pitch) : flatCrest(at)
  })
  return `M${core} ${px(top)}L${px(root)} ${px(top)}${turns.join('')}L${px(root)} ${px(bottom)}L${core} ${px(bottom)}Z`
}

/** A point by its depth under the crest and its way along from the crest's middle, in pitches. */
type At = (depth: number, along: number) => string

function flatCrest(at: At): string {
  const foot = METRIC_CREST / 2 + METRIC_DEPTH * Math.tan(METRIC_FLANK)
  return `L${at(METRIC_DEPTH, -foot)}L${at(0, -METRIC_CREST / 2)}L${at(0, METRIC_CREST / 2)}L${at(METRIC_DEPTH, foot)}`
}

/** Crest and root are arcs of one radius, which follows from depth and flank: they meet the flanks without a corner. */
function roundedCrest(at: At, pitch: number): string {
  const [sine, cosine, tangent] = [Math.sin(WHITWORTH_FLANK), Math.cos(WHITWORTH_FLANK), Math.tan(WHITWORTH_FLANK)]
  const radius = (1 / 4 - (WHITWORTH_DEPTH / 2) * tangent) / (cosine - (1 - sine) * tangent)
  const [drop, reach] = [radius * (1 - sine), radius * cosine]
  const arc = (sweep: 0 | 1, to: string): string => `A${px(radius * pitch)} ${px(radius * pitch)} 0 0 ${sweep} ${to}`
  return [
    arc(0, at(WHITWORTH_DEPTH - drop, reach - 1 / 2)),
    `L${at(drop, -reach)}`,
    arc(1, at(drop, reach)),
    `L${at(WHITWORTH_DEPTH - drop, 1 / 2 - reach)}`,
    arc(0, at(WHITWORTH_DEPTH, 1 / 2)),
  ].join('')
}

function px(value: number): number {
  return Math.round(value * 1000) / 1000
}
