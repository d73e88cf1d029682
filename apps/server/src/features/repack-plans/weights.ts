import type { Objective } from '@glandkeeper/contract/repack-plans'
import type { SettingValues } from '@glandkeeper/contract/settings'
import type { CostWeights } from '@glandkeeper/engines/schedule/repack-plan/slot-cost'

/** In points: running out at a valve of low criticality is one. */
const POINTS = { costOfRunningOut: 1, costOfLeak: 0.1, costOfRepack: 0.35 }
const ofCriticality: Readonly<Record<Objective, Readonly<Record<string, number>>>> = {
  chance: { low: 1, ordinary: 2, high: 5 },
  money: { low: 0.5, ordinary: 1, high: 2 },
}

/** Points and the weights of criticality are set by us; prices are the site's own settings. */
export function weightsOf(objective: Objective, criticality: string, settings: SettingValues): CostWeights {
  const { costOfRunningOut, costOfLeak, costOfRepack } = objective === 'chance' ? POINTS : settings
  return { costOfRunningOut, costOfLeak, costOfRepack, criticality: ofCriticality[objective][criticality] ?? 1 }
}
