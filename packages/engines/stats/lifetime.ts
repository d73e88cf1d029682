import { type InputProblem, refuse } from '../outcome.ts'

/** One life watched from its beginning: until it ended, or until the watch did. */
export interface Lifetime {
  /** How long it was watched, in any one unit; 0 or more. */
  readonly time: number
  /** True: it ended then. False: it went on when last seen (censored). */
  readonly ended: boolean
}

/** What is known of the length of one life, for fitting a distribution. Times above 0, in any one unit. */
export type KnownLifetime =
  | { readonly kind: 'ended'; readonly at: number }
  /** Still going when last seen. */
  | { readonly kind: 'going'; readonly at: number }
  /** Ended between two looks; `after` 0 when it had ended at the first look. */
  | { readonly kind: 'between'; readonly after: number; readonly before: number }

/** @example refusedLifetimes('lives', [])?.problem.code // → 'lifetimes/none' */
export function refusedLifetimes(field: string, lives: readonly Lifetime[]): { ok: false; problem: InputProblem } | null {
  if (lives.length === 0) return refuse('lifetimes/none', field, 'there is no life to count')
  const wrong = lives.find(({ time }) => !(time >= 0 && time < Infinity))
  return wrong ? refuse('lifetimes/not-a-time', field, `a life lasts 0 or more, not ${wrong.time}`) : null
}

/** @example refusedKnownLifetimes([{ kind: 'going', at: 5 }])?.problem.code // → 'lifetimes/none-ended' */
export function refusedKnownLifetimes(lives: readonly KnownLifetime[]): { ok: false; problem: InputProblem } | null {
  for (const life of lives) {
    if (life.kind === 'between') {
      if (!(life.after >= 0 && life.before > life.after && life.before < Infinity))
        return refuse('lifetimes/not-an-interval', 'lives', `no life ends between ${life.after} and ${life.before}`)
    } else if (!(life.at > 0 && life.at < Infinity)) {
      return refuse('lifetimes/not-a-time', 'lives', `a length of life must be more than 0, not ${life.at}`)
    }
  }
  if (lives.every(({ kind }) => kind === 'going'))
    return refuse('lifetimes/none-ended', 'lives', `none of ${lives.length} lives has ended: nothing to fit`)
  return null
}

/** At one time: how many were watched just before it, how many ended then, how many were last seen then. */
export interface LifeCount {
  readonly time: number
  readonly atRisk: number
  readonly ended: number
  readonly lastSeen: number
}

/**
 * The lives counted at each different time, in order. One last seen at the time of an end still counts as watched then.
 *
 * @example countLives([{ time: 3, ended: true }, { time: 3, ended: false }])[0] // → { time: 3, atRisk: 2, ended: 1, lastSeen: 1 }
 */
export function countLives(lives: readonly Lifetime[]): LifeCount[] {
  const tallies = new Map<number, { ended: number; lastSeen: number }>()
  for (const { time, ended } of lives) {
    const tally = tallies.get(time) ?? { ended: 0, lastSeen: 0 }
    if (ended) tally.ended++
    else tally.lastSeen++
    tallies.set(time, tally)
  }
  let atRisk = lives.length
  return [...tallies]
    .toSorted(([one], [other]) => one - other)
    .map(([time, { ended, lastSeen }]) => {
      const count = { time, atRisk, ended, lastSeen }
      atRisk -= ended + lastSeen
      return count
    })
}
