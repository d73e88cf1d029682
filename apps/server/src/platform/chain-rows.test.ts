import { sendEvents } from '@glandkeeper/contract/events'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { expect, it } from 'vitest'
import { aServer } from '../../testing/a-server.ts'
import { add } from '../../testing/valves-alike.ts'
import { chainOf } from './chain-rows.ts'

const NOTE = 'Ø 12 “wet”\n\ttab \\ back "quote" 💧'

async function aChain() {
  const server = await aServer()
  const { valveId } = await add(server, { tag: 'BH-1' })
  const events = [1, 2, 3, 4].map((day) =>
    aLeak({ valveId, takenAt: `2026-05-0${day}T08:00:0${day}.123+01:00`, note: NOTE, device: 'tel. Ä' }),
  )
  const early = events.slice(0, 2)
  await server.expectOk('fitter', sendEvents, { body: { events: early } })
  await server.expectOk('engineer', sendEvents, { body: { events: events.slice(2) } })
  return server
}

it('reads the same events as rows do, in order', async () => {
  const { store, siteId } = await aChain()
  const rows = await store.read.event.findMany({ where: { siteId }, orderBy: { position: 'asc' } })
  const links = []
  for await (const { before: _, ...link } of chainOf(store.chain, siteId) as AsyncGenerator<Record<string, unknown>>)
    links.push(link)
  expect(rows).toHaveLength(4)
  const spelled = rows.map(({ takenAt, receivedAt, ...row }) => {
    return { ...row, takenAt: takenAt.toISOString(), receivedAt: receivedAt.toISOString() }
  })
  expect(links).toEqual(spelled)
})

it('ends where it is asked to', async () => {
  const { store, siteId } = await aChain()
  const positions = []
  for await (const { position } of chainOf(store.chain, siteId, 3)) positions.push(position)
  expect(positions).toEqual([1, 2, 3])
})

it('reads some places with the hash before each, and leaves out places that are not there', async () => {
  const { store, siteId } = await aChain()
  const [first, , third, fourth] = await store.chain.behind(siteId, 0, 10)
  const some = await store.chain.at(siteId, [9, 4, 1])
  expect(some.map(({ position, before }) => [position, before])).toEqual([
    [1, ''],
    [4, third!.hash],
  ])
  expect(some.map(({ hash }) => hash)).toEqual([first!.hash, fourth!.hash])
  expect(await store.chain.at(siteId, [])).toEqual([])
  expect(await store.chain.at('another site', [1])).toEqual([])
})
