import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { mistakableThreads } from '@glandkeeper/engines/threads/mistakable-threads'
import { spannersOf } from '@glandkeeper/engines/threads/nut-spanner'

/** Which spanners to carry, and which nuts to keep apart. A nut alone does not tell its thread. */
export function nutsOf(studThread: string | null): Pick<CutCard, 'spanners' | 'threadCautions'> {
  if (studThread === null) return { spanners: [], threadCautions: [] }
  const found = spannersOf(studThread)
  const alike = mistakableThreads(studThread)
  return {
    spanners: found.ok
      ? found.spanners.map(({ marking, acrossFlats, hexagon }) => ({ marking, acrossFlats, hexagon: hexagons[hexagon] }))
      : [],
    threadCautions: alike.ok ? alike.threads.map(({ caution }) => caution) : [],
  }
}

const hexagons = {
  present: 'present size',
  'before 1982': 'nuts made before 1982',
  plain: 'plain nut',
  heavy: 'heavy nut',
  large: 'large hexagon',
  small: 'small hexagon',
} as const
