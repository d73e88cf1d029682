import type { SurvivalStep } from '@glandkeeper/engines/stats/kaplan-meier'

/** What a screen shows apart. */
const MOST_STEPS = 60

/**
 * A curve of sixty steps at most: first and last, and each at which it has fallen by a 58th of its whole fall since the one
 * kept before. By less than that it is off between them.
 */
export function thinned(steps: readonly SurvivalStep[]): readonly SurvivalStep[] {
  if (steps.length <= MOST_STEPS) return steps
  const least = (1 - (steps.at(-1)?.survival ?? 1)) / (MOST_STEPS - 2)
  let keptAt = 1
  return steps.filter(({ survival, ended }, index) => {
    const isKept = ended > 0 && (keptAt === 1 || keptAt - survival >= least)
    if (isKept) keptAt = survival
    return isKept || index === steps.length - 1
  })
}
