import { addArea } from '@glandkeeper/contract/areas'
import { showLeakLosses } from '@glandkeeper/contract/leak-losses'
import { listLeakRules, showRegulated } from '@glandkeeper/contract/leak-rules'
import { historyCsv, valvesCsv } from '@glandkeeper/fixtures/demo-plant/csv'
import { type DemoPlant, demoPlant, demoSeed } from '@glandkeeper/fixtures/demo-plant/demo-plant'
import { standingLeaks } from '@glandkeeper/fixtures/demo-plant/standing-leaks'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { applied, checked } from '../../../testing/import-file.ts'
import { statesThatDiffer } from '../glands/index.ts'
import { putDemoLeaks } from './demo-leaks.ts'

const TODAY = '2026-05-04'

/** Gas and methanol, the valves that stand open, and what was written of the last two years: the whole plant takes long to bring in. */
function partOf(plant: DemoPlant): DemoPlant {
  const open = standingLeaks(plant, { seed: demoSeed, endsOn: TODAY }).map(({ tag }) => tag)
  const tags = new Set([...plant.valves.filter(({ service }) => METERED.has(service)).map(({ tag }) => tag), ...open])
  const history = plant.history.filter(({ tag, takenAt }) => tags.has(tag) && takenAt > '2024-05')
  return { ...plant, valves: plant.valves.filter(({ tag }) => tags.has(tag)), history }
}

const METERED = new Set(['natural gas', 'methanol'])

async function aServerWithDemoLeaks() {
  const server = await aServer()
  const { store, siteId, personIds, now } = server
  const plant = partOf(demoPlant({ seed: demoSeed, endsOn: TODAY }))
  for (const body of plant.areas.filter(({ code }) => code !== 'BH')) await server.expectOk('planner', addArea, { body })
  await applied(server, await checked(server, 'valves', valvesCsv(plant.valves)), 'whole file')
  await applied(server, await checked(server, 'history', historyCsv(plant.history)), 'whole file')
  // As the first start leaves it: what is imported has its leaks.
  await store.write((write) => write.site.update({ where: { id: siteId }, data: { leaksKeptAt: now } }))
  const put = () => putDemoLeaks(store, { siteId, personId: personIds.planner }, plant, { today: TODAY, clock: () => now })
  return { ...server, put }
}

it('the demo has a rule with its rounds, a leak in its clock, one overdue, one put off, and losses of every kind', async () => {
  const server = await aServerWithDemoLeaks()
  const { put, expectOk, store, siteId, now } = server
  await put()
  const { rules } = await expectOk('planner', listLeakRules)
  expect(rules).toMatchObject([{ name: 'Gas and methanol valves', exampleOf: '40 CFR 61.242-7', leakFrom: 10_000, valves: 12 }])
  const { leaks, unsafe, percent } = await expectOk('planner', showRegulated, { params: { ruleId: rules[0]!.ruleId }, query: {} })
  const byMeter = leaks.filter(({ worst }) => worst === null)
  expect(new Set(byMeter.map(({ repair }) => repair))).toEqual(new Set(['overdue', 'due', 'put off', 'verified']))
  expect(byMeter.filter(({ attempt }) => attempt === 'made late')).toHaveLength(1)
  expect(byMeter.flatMap(({ deferral }) => deferral?.approvedBy ?? [])).toEqual(['Priya Lindqvist'])
  expect(unsafe).toMatchObject([{ note: expect.stringContaining('Plan:') }])
  expect(percent.course.filter(({ denominator }) => denominator >= 8).length).toBeGreaterThanOrEqual(7)
  const { losses, withoutFigure } = await expectOk('planner', showLeakLosses)
  expect(new Set(losses.map(({ method }) => method))).toEqual(
    new Set([
      'screening correlation',
      'drops counted',
      'steam through an opening',
      'water through an opening',
      'air through an opening',
    ]),
  )
  expect(withoutFigure.length).toBeGreaterThan(0)
  const differing = []
  for await (const one of statesThatDiffer(store.read, siteId, now)) differing.push(one)
  expect(differing).toEqual([])
  // A start that was cut short does it again.
  const entries = await store.read.event.count()
  await put()
  expect(await store.read.event.count()).toBe(entries)
})
