import { kaplanMeier } from '@glandkeeper/engines/stats/kaplan-meier'
import { expect, it } from 'vitest'
import { thinned } from './thin-steps.ts'

function stepsOf(count: number) {
  const lives = Array.from({ length: count }, (_, index) => ({ time: index + 1, ended: index % 3 !== 1 }))
  const curve = kaplanMeier({ lives, confidence: 0.95, scale: 'log-log' })
  if (!curve.ok) throw new Error(curve.problem.detail)
  return curve.steps
}

it('a curve of sixty steps stays, a longer one keeps sixty at most with both ends, off by no more than a 58th', () => {
  expect(thinned(stepsOf(60))).toHaveLength(60)
  const steps = stepsOf(2000)
  const kept = thinned(steps)
  expect(kept.length).toBeLessThanOrEqual(60)
  expect(kept.length).toBeGreaterThan(40)
  expect([kept[0], kept.at(-1)]).toEqual([steps[0], steps.at(-1)])
  const off = steps.map(({ time, survival }) => (kept.findLast((step) => step.time <= time)?.survival ?? 1) - survival)
  expect(Math.max(...off)).toBeLessThan(1 / 58)
  expect(Math.min(...off)).toBe(0)
})
