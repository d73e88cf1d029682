import { expect, it } from 'vitest'
import { choicesByCost, Improvement } from './improve.ts'
import { NONE, Places } from './places.ts'
import { AssignmentBuilder } from './problem.ts'

/** Two places: A has the second for 2 or the first for 1, B waits for 5 or has the first for 1. */
function places(...taken: readonly number[]) {
  const builder = new AssignmentBuilder([1, 1])
  const choice = (cost: number, resource: number | null) => {
    builder.choice(cost)
    if (resource !== null) builder.use(resource, 1)
  }
  builder.item('A')
  choice(2, 1)
  choice(1, 0)
  builder.item('B')
  choice(5, null)
  choice(1, 0)
  const built = builder.build()
  if (!built.ok) throw new Error(built.problem.detail)
  const made = new Places(built.problem)
  made.takeAll(taken)
  return { made, improvement: new Improvement(made, choicesByCost(built.problem)) }
}

it('an item goes alone to the cheapest choice that fits', () => {
  const { made, improvement } = places(0, 2)
  improvement.shift()
  expect([[...made.taken], made.cost]).toEqual([[1, 2], 6])
})

it('another makes room where both together win', () => {
  const { made, improvement } = places(1, 2)
  improvement.shift()
  expect(made.cost).toBe(6)
  improvement.shiftAndDisplace(() => false)
  expect([[...made.taken], made.cost, made.holds(0)]).toEqual([[0, 3], 3, true])
})

it('what has no choice gets one before anything else is won', () => {
  const { made, improvement } = places(1, NONE)
  improvement.shiftAndDisplace(() => false)
  expect([made.missing, made.cost]).toEqual([0, 3])
})

it('moves end when they are told to', () => {
  const { made, improvement } = places(1, 2)
  improvement.shiftAndDisplace(() => true)
  expect(made.cost).toBe(6)
})
