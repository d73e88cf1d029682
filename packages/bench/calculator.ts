import type { Endpoint } from '@glandkeeper/contract/endpoint'
import { everybody } from '@glandkeeper/contract/roles'
import { type Outcome, refuse } from '@glandkeeper/engines/outcome'
import type { z } from 'zod'

/** Said wherever the next step is an open gland. */
export const OPEN_GLAND =
  'Before a gland is opened or its nuts are slackened: isolate, lock, drain and vent, prove zero. Site procedure, permit and qualified persons decide.'

/** Said wherever the next step is a spanner on a gland in service. */
export const NUTS_IN_SERVICE =
  'Nuts a quarter turn at a time, alternately and equally; a stiff stem is a finding. Slacken only an isolated valve. Site procedure, permit and qualified persons decide.'

/** The shelves of the bench, in the order of the work. */
export const shelves = {
  cut: 'Cut and fill',
  load: 'Load and move',
  threads: 'Studs and nuts',
  packing: 'Which packing',
  leak: 'What a leak loses',
  regulated: 'Regulated leaks',
} as const

/**
 * One calculator as a plain value: what goes in, what comes out, the formula, where it comes from and what it does
 * not know. The server serves it, the web computes with it on the spot, the API document describes it.
 */
export interface Calculator<In extends z.ZodObject = z.ZodObject, Out extends z.ZodObject = z.ZodObject> {
  /** The last part of its address. */
  readonly name: string
  readonly shelf: keyof typeof shelves
  readonly title: string
  /** What a person at a bench asks, in one line. */
  readonly question: string
  readonly input: In
  readonly output: Out
  /** Figures it opens with, so that nobody meets an empty page. */
  readonly example: z.input<In>
  /** Said beside an input: where its default comes from, how to measure it. */
  readonly notes?: Partial<Readonly<Record<keyof z.input<In>, string>>>
  readonly formula: readonly string[]
  /** What it holds for, and what it does not know. */
  readonly limits: string
  readonly sources: readonly `SRC-${number}`[]
  /** Said wherever its answer may lead to hands on a gland. */
  readonly caution?: string
  // A method, so that a list of calculators is a list of one type.
  compute(input: z.output<In>): Outcome<z.output<Out>>
}

/** An answer beyond what any gland has is refused by the figure that left its range, not given. */
export function calculator<In extends z.ZodObject, Out extends z.ZodObject>(value: Calculator<In, Out>): Calculator<In, Out> {
  return {
    ...value,
    compute(input) {
      const outcome = value.compute(input)
      if (!outcome.ok) return outcome
      const [beyond] = value.output.safeParse(outcome).error?.issues ?? []
      return beyond
        ? refuse('number/out-of-range', NO_SINGLE_INPUT, `these figures lead beyond any gland: ${beyond.message}`)
        : outcome
    },
  }
}

/** The field of a problem that comes of several inputs together. */
export const NO_SINGLE_INPUT = ''

/** Calculators read nothing of the register, so everybody who is signed in may use them. */
export function benchEndpoint<C extends Pick<Calculator, 'name' | 'input' | 'output'>>({ name, input, output }: C) {
  return {
    method: 'POST',
    path: `/api/bench/${name}`,
    who: everybody,
    body: input as C['input'],
    ok: output as C['output'],
    status: 200,
  } as const satisfies Endpoint
}
