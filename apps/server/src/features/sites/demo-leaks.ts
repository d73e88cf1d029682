import { FieldEvent } from '@glandkeeper/contract/events'
import { type DemoPlant, demoSeed } from '@glandkeeper/fixtures/demo-plant/demo-plant'
import { type MeterRounds, meterRounds, type PlantEntry } from '@glandkeeper/fixtures/demo-plant/meter-rounds'
import { standingLeaks } from '@glandkeeper/fixtures/demo-plant/standing-leaks'
import type { SignedIn } from '../../platform/auth.ts'
import type { Clock } from '../../platform/clock.ts'
import { idOfParts } from '../../platform/ids.ts'
import type { Store, Write } from '../../platform/store.ts'
import { appendEvents } from '../events/index.ts'
import { addRuleOf, examplesOffered, monitorValvesOf } from '../leak-rules/index.ts'
import { LeakKeeping } from '../leaks/index.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

const EXAMPLE = '61.242-7'
/** Entries of one transaction: a start that is cut short loses no more. */
const PORTION = 60

/**
 * A rule for gas and methanol valves of the demo plant with two years of meter rounds, and leaks that stand open.
 * The rule comes last: where there is one, all of it is there. The same entries made twice are one.
 */
export async function putDemoLeaks(
  store: Store,
  by: By,
  plant: DemoPlant,
  { today, clock }: { readonly today: string; readonly clock: Clock },
): Promise<void> {
  const when = { seed: demoSeed, endsOn: today }
  const rounds = meterRounds(plant, when)
  const events = await eventsOf(store, by.siteId, [...rounds.entries, ...standingLeaks(plant, when)])
  for (let from = 0; from < events.length; from += PORTION) {
    const portion = events.slice(from, from + PORTION)
    const outcomes = await store.write((write) => appendEvents(write, by, portion, clock(), { keepsForecasts: false }))
    const refused = outcomes.find(({ outcome }) => outcome === 'refused')
    if (refused) throw new Error(`an entry of the demo was refused: ${JSON.stringify(refused)}`)
  }
  await store.write((write) => putRule(write, by, rounds, clock()))
  await new LeakKeeping({ store, clock, log: console }).catchUp()
}

async function eventsOf(store: Store, siteId: string, entries: readonly PlantEntry[]): Promise<FieldEvent[]> {
  const valves = await store.read.valve.findMany({ where: { siteId }, select: { id: true, tag: true } })
  const idOf = new Map(valves.map(({ id, tag }) => [tag, id]))
  return entries.map(({ tag, told }) =>
    FieldEvent.parse({
      ...told,
      id: idOfParts([siteId, tag, told.kind, told.takenAt]),
      version: 1,
      valveId: idOf.get(tag),
      device: 'demo plant',
    }),
  )
}

async function putRule(write: Write, by: By, { since, valves }: MeterRounds, now: Date): Promise<void> {
  const example = examplesOffered.find(({ key }) => key === EXAMPLE)
  if (!example) throw new Error(`there is no example ${EXAMPLE}`)
  const rule = { ...example.rule, name: 'Gas and methanol valves' }
  const ruleId = await addRuleOf(write, by, { rule, exampleOf: example.paragraph }, now)
  for (const { tag, kind, note } of valves) await monitorValvesOf(write, by, { tags: [tag], ruleId, kind, note, since }, now)
}
