import { calculators } from '@glandkeeper/bench/calculators'
import { benchEndpoint, type Calculator, NO_SINGLE_INPUT } from '@glandkeeper/bench/calculator'
import type { FastifyInstance } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'

export function benchRoutes(app: FastifyInstance, platform: Platform): void {
  for (const calculator of calculators) {
    route(app, platform, benchEndpoint(calculator), ({ body }) => Promise.resolve(computed(calculator, body)))
  }
}

/** The engine's problem in the form of every refusal: a code, a sentence, the input at fault. */
function computed(calculator: Calculator, body: Record<string, unknown>): Record<string, unknown> {
  const outcome = calculator.compute(body)
  if (outcome.ok) return outcome
  const { field, detail, code } = outcome.problem
  throw new Refusal('bench/not-computed', detail, [
    { pointer: field === NO_SINGLE_INPUT ? '#' : `#/${field}`, detail: `${detail} (${code})` },
  ])
}
