import { glandSources } from './gland/sources.ts'
import { intervalSources } from './leak/interval-sources.ts'
import { leakHistorySources } from './leak/leak-history-sources.ts'
import { leakRuleSources } from './leak/rules/sources.ts'
import { leakSources } from './leak/sources.ts'
import { loadSources } from './load/sources.ts'
import { packingSources } from './packing/sources.ts'
import { ratingSources } from './rating/sources.ts'
import { scheduleSources } from './schedule/sources.ts'
import type { Source } from './source.ts'
import { statsSources } from './stats/sources.ts'
import { steamSources } from './steam/sources.ts'
import { storeSources } from './stores/sources.ts'
import { threadSources } from './threads/sources.ts'
import { wearSources } from './wear/sources.ts'

/** Every source of the engines; docs/sources.md shows the same list, and a test compares them. */
export const sources: readonly Source[] = [
  ...glandSources,
  ...threadSources,
  ...statsSources,
  ...loadSources,
  ...leakSources,
  ...leakRuleSources,
  ...steamSources,
  ...ratingSources,
  ...packingSources,
  ...intervalSources,
  ...leakHistorySources,
  ...wearSources,
  ...scheduleSources,
  ...storeSources,
]

const byId = new Map(sources.map((source) => [source.id, source]))

/** Throws for an id that is not listed: a calculator without its source is a fault of the program. */
export function sourceOf(id: Source['id']): Source {
  const source = byId.get(id)
  if (!source) throw new Error(`no source ${id}`)
  return source
}
