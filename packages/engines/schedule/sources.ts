import type { Source } from '../source.ts'

/** Sources of what is scheduled, and when. */
export const scheduleSources: readonly Source[] = [
  {
    id: 'SRC-720',
    what: 'Next look: the earliest of follow-up, leak interval, reserve and longest time between looks',
    source: 'rules of this program; the follow-up about three days after a repack is usual',
    mark: 'set by us',
  },
]
