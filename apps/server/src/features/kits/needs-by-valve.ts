import type { Kit } from '@glandkeeper/contract/kits'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { OpenNeed, PackingNeed } from '../stock/index.ts'

interface Valve {
  readonly valveId: string
  readonly tag: string
}

/** Valves with what they take, and those of which nobody can say, by what is not known. */
export function needsByValve<Each extends Valve>(
  valves: readonly Each[],
  found: ReadonlyMap<string, PackingNeed | OpenNeed>,
): { readonly needs: readonly (Each & { readonly need: PackingNeed })[]; readonly open: Kit['open'] } {
  const needOf = ({ valveId }: Valve) => found.get(valveId) ?? { open: 'packing not known' }
  const needs = valves.flatMap((valve) => {
    const need = needOf(valve)
    return 'open' in need ? [] : [{ ...valve, need }]
  })
  const groups = groupedBy(valves, (valve) => {
    const need = needOf(valve)
    return 'open' in need ? need.open : null
  })
  return { needs, open: [...groups].map(([says, unknown]) => ({ says, tags: unknown.map(({ tag }) => tag) })) }
}
