import { chooseExponent } from '@glandkeeper/engines/leak/interval-exponent'
import { fitLeakGroup, type LeakGroup, type VisitSpan } from '@glandkeeper/engines/leak/interval'
import { fitPriors } from '@glandkeeper/engines/wear/fit'
import type { FitBody } from '../glands/index.ts'
import type { LivesOfSite } from './lives-of-site.ts'

/** Learns from the lives of a site. A part that has nothing to learn from stays empty, and forecasts lean on our own values. */
export function fitOfLives({ lives, visits }: LivesOfSite, onProgress: (share: number) => void): FitBody {
  const wear = fitPriors({ lives, onProgress })
  return { wear: wear.ok ? { groups: wear.groups, plant: wear.plant, quality: wear.quality } : null, leaks: leaksOf(visits) }
}

/** One exponent of age for the plant, since a group alone seldom tells it; rates by group. */
function leaksOf(visits: LivesOfSite['visits']): FitBody['leaks'] {
  const everywhere = [...visits.values()].flat()
  const chosen = chooseExponent(everywhere)
  if (!chosen.ok) return { groups: {}, plant: null }
  const { exponent } = chosen.group
  const groups = [...visits].flatMap(([group, valves]): [string, LeakGroup][] => {
    const found = groupWith(valves, exponent)
    return found === null ? [] : [[group, found]]
  })
  return { groups: Object.fromEntries(groups), plant: chosen.group }
}

function groupWith(valves: readonly (readonly VisitSpan[])[], exponent: number): LeakGroup | null {
  const found = fitLeakGroup({ valves, exponent })
  if (!found.ok) return null
  const { shape, scale, valves: watched, leaks } = found
  return { shape, scale, exponent, valves: watched, leaks }
}
