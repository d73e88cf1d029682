/** What stands out about an entry. Kept and shown; never a reason to refuse what somebody did at the valve. */
export type ReserveFinding =
  | { readonly code: 'reserve/turns-disagree-with-gap'; readonly side: Side; readonly expected: number; readonly read: number }
  | { readonly code: 'reserve/follower-tilts'; readonly gapLeft: number; readonly gapRight: number }
  | { readonly code: 'reserve/follower-barely-entered'; readonly engagement: number; readonly leastEngagement: number }
  | { readonly code: 'reserve/no-travel-left'; readonly reserve: number }
  | { readonly code: 'reserve/nipped-without-travel'; readonly reserve: number }
  | { readonly code: 'reserve/turns-past-the-face'; readonly side: Side; readonly by: number }
  | { readonly code: 'reserve/nipped-unevenly'; readonly turnsLeft: number; readonly turnsRight: number }
  | { readonly code: 'reserve/slackened'; readonly turnsLeft: number; readonly turnsRight: number }
  | { readonly code: 'reserve/pitch-unknown'; readonly studThread: string | null }
  | { readonly code: 'reserve/gap-unknown-after-packing' }
  | { readonly code: 'reserve/stem-stiff'; readonly stem: string }
  | { readonly code: 'reserve/not-proved' }
  | { readonly code: 'reserve/turns-out-of-reach'; readonly side: Side; readonly gap: number }
  | { readonly code: 'reserve/thread-without-gap' }

export type Side = 'left' | 'right'

/**
 * When two figures differ enough to be worth a word. Settings of ours, not published values: a gap is read
 * to about 0.3 mm, so two readings differ by chance up to about 0.85 mm (two standard deviations).
 */
export const reserveRules = {
  /** Least difference between expected and read gap that counts, in mm. */
  disagreement: 1,
  /** And as a share of the travel that turns say was used since the last reading. */
  disagreementShare: 0.25,
  /** Difference between left and right gap that is called a tilt, in mm. */
  tilt: 0.75,
  /** Difference between left and right turns that is called uneven: the nuts are taken up alternately and equally. */
  unevenTurns: 0.25,
} as const
