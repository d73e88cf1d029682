// Entries of many valves over six years, in the order they came: what wears, is taken up, leaks and is repacked.
import { seededRandom } from '../../packages/fixtures/dist/random.js'

const DAY = 86_400_000
const DAYS = 2191
/** Of a visit on average: what is written down. */
const ENTRIES_OF_A_VISIT = 1.19
/** A thousandth of the valves is walked to twenty times as often: the longest histories. */
const OFTEN_EVERY = 1000
const VISITS_OF_OFTEN = 20
const PITCH = 1.75
const KEEP_CLEAR = 3
const FULL_GAP = 11

export const families = ['graphite braid', 'PTFE braid', 'aramid braid', 'carbon braid', 'flax braid', 'graphite rings']
export const isWalkedOften = (number) => number % OFTEN_EVERY === 0

/**
 * @yields {{ number: number, takenAt: Date, kind: string, fields: object }} at least so many, round by round of the whole plant
 */
export function* leakingValves({ valves, events, endsAt }) {
  const random = seededRandom(7, 'leaking valves')
  const state = Array.from({ length: valves }, (_, number) => begun(number, random))
  const rounds = Math.max(2, Math.round(events / valves / ENTRIES_OF_A_VISIT))
  const stepDays = DAYS / rounds
  const begins = endsAt.getTime() - DAYS * DAY
  for (let round = 0; round < rounds; round += 1)
    for (const [number, valve] of state.entries()) {
      const visits = isWalkedOften(number) ? VISITS_OF_OFTEN : 1
      for (let visit = 0; visit < visits; visit += 1) {
        const day = (round + (number / valves + visit) / visits) * stepDays
        for (const { after, kind, fields } of visited(valve, stepDays / visits, random))
          yield { number, takenAt: new Date(Math.round(begins + day * DAY + after)), kind, fields }
      }
    }
}

function begun(number, random) {
  return {
    gap: KEEP_CLEAR + 1 + random.uniform() * 7,
    // A few wear fast: those that leak again and again.
    pace: random.chance(0.03) ? 0.012 : 0.002 + random.uniform() * 0.003,
    slack: random.uniform(),
    family: families[number % families.length],
    leaks: false,
  }
}

const MINUTE = 60_000

/** What one visit writes down, each with its milliseconds after the first. */
function visited(valve, days, random) {
  valve.slack += valve.pace * days * (0.5 + random.uniform())
  if (random.chance(0.04)) return [{ after: 0, kind: 'visit.missed', fields: { reason: 'no access' } }]
  if (valve.slack < 1 && !valve.leaks) {
    if (random.chance(0.02)) return repacked(valve, random, true)
    return random.chance(0.35) ? [reading(valve, 0, 'dry')] : [{ after: 0, kind: 'leak.seen', fields: { leak: 'dry' } }]
  }
  const grade = random.weighted([
    ['weep', 6],
    ['drip', 3],
    ['run', 1],
  ])
  valve.leaks = true
  const seen = { after: 0, kind: 'leak.seen', fields: { leak: grade } }
  if (random.chance(0.08)) return [seen]
  if (valve.gap - PITCH / 2 < KEEP_CLEAR) return [seen, ...repacked(valve, random, false)]
  return random.chance(0.3) ? [seen, ...nipped(valve, grade, random)] : nipped(valve, grade, random)
}

function nipped(valve, leakBefore, random) {
  valve.gap -= PITCH / 2
  const isDry = random.chance(0.9)
  valve.leaks = !isDry
  if (isDry) valve.slack = random.uniform() * 0.3
  const leakAfter = isDry ? 'dry' : 'damp'
  const nip = {
    after: 4 * MINUTE,
    kind: 'gland.nipped',
    fields: { turnsLeft: 0.5, turnsRight: 0.5, stem: 'free', leakBefore, leakAfter },
  }
  return random.chance(0.4) ? [nip, reading(valve, 7 * MINUTE, leakAfter)] : [nip]
}

function repacked(valve, random, isEarly) {
  valve.gap = FULL_GAP
  valve.slack = random.uniform() * 0.2
  valve.leaks = false
  if (!isEarly && random.chance(0.25)) valve.family = random.choice(families)
  const gaps = { gapLeft: valve.gap, gapRight: valve.gap }
  const fields = { family: valve.family, rings: 5, section: 8.5, cut: 'skive', proved: true, ...gaps }
  return [{ after: 60 * MINUTE, kind: 'packing.renewed', fields }, reading(valve, 3 * DAY, 'dry')]
}

function reading({ gap }, after, leak) {
  const read = Math.round(gap * 10) / 10
  return { after, kind: 'reading.taken', fields: { gapLeft: read, gapRight: read, leak } }
}
