import { sendEvents } from '@glandkeeper/contract/events'
import { showPocket } from '@glandkeeper/contract/pocket'
import { makeRound } from '@glandkeeper/contract/rounds'
import { addValve, retireValve, showValve } from '@glandkeeper/contract/valves'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { aServerWithPlant } from '../../../testing/a-plant.ts'

type From = { readonly asOf: string; readonly position: number }

async function everyPage(server: TestServer, from?: From) {
  const pages = []
  for (let after: string | null | undefined; after !== null;) {
    const query = { ...(from && { since: from.asOf, position: String(from.position) }), ...(after && { after }) }
    const page = await server.expectOk('fitter', showPocket, { query })
    pages.push(page)
    after = page.next
  }
  const { asOf, position, gone } = pages[0]!
  return { pages, cards: pages.flatMap(({ cards }) => cards), gone, from: { asOf, position } }
}

it('the pages together are every valve once, each as its own page has it, with its last three entries', async () => {
  const server = await aServerWithPlant(62)
  const round = { name: 'Walk', walkOn: '2026-05-05', fitterId: null, areaCodes: ['BH'], dueBy: null }
  const { stops } = await server.expectOk('planner', makeRound, { body: round })
  const walked = new Set(stops.map(({ tag }) => tag))
  const { pages, cards } = await everyPage(server)
  expect(pages.map(({ cards: { length }, total }) => [length, total])).toEqual([
    [60, 62],
    [2, 62],
  ])
  expect(new Set(cards.map(({ valve }) => valve.tag)).size).toBe(62)
  const stop = cards.find(({ valve }) => walked.has(valve.tag))
  for (const card of [stop!, ...cards.filter(({ valve }) => !walked.has(valve.tag)).slice(0, 20)]) {
    const history = await server.expectOk('fitter', showValve, { params: { tag: card.valve.tag } })
    expect(card).toEqual({
      valve: history.valve,
      state: history.state,
      expects: walked.has(card.valve.tag) ? history.expects : null,
      timeline: history.timeline.slice(0, 3).map(({ event, says, standsAs }) => ({ event, says, standsAs })),
    })
  }
}, 60_000)

it('afterwards only what changed: an entry, a change of the register, and what left it', async () => {
  let now = new Date('2026-05-04T09:00:00Z')
  const server = await aServer({ clock: () => now })
  const valves = []
  for (const tag of ['BH-1', 'BH-2', 'BH-3'])
    valves.push(await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag }) }))
  const [seen, retired] = valves
  now = new Date('2026-05-04T10:00:00Z')
  const { cards, from } = await everyPage(server)
  expect(cards).toHaveLength(3)
  now = new Date('2026-05-04T11:00:00Z')
  expect(await everyPage(server, from)).toMatchObject({ cards: [], gone: [] })

  const leak = aLeak({ valveId: seen!.valveId, takenAt: '2026-05-04T08:00:00Z', leak: 'drip' })
  await server.expectOk('fitter', sendEvents, { body: { events: [leak] } })
  await server.expectOk('planner', retireValve, { params: { tag: 'BH-2' }, body: { revision: 1, reason: 'blanked off' } })
  const changed = await everyPage(server, from)
  expect(changed.gone).toEqual([retired!.valveId])
  expect(changed.cards.map(({ valve, timeline }) => [valve.tag, timeline[0]?.event.id])).toEqual([['BH-1', leak.id]])
})

it('of another site nothing is carried', async () => {
  expect((await everyPage(await aServer())).cards).toEqual([])
})
