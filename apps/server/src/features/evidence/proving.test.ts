import { cancelProof, proveChain, showChain } from '@glandkeeper/contract/evidence'
import { sendEvents } from '@glandkeeper/contract/events'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'
import { prove } from './prove.ts'
import { sealHead } from './seals.ts'
import { siteKey } from './site-key.ts'

async function aChain(count = 3): Promise<TestServer> {
  const server = await aServer()
  const { valveId } = await add(server, { tag: 'BH-1' })
  await leaksAt(server, valveId, count)
  return server
}

async function leaksAt(server: TestServer, valveId: string, count: number, from = 1): Promise<void> {
  const events = Array.from({ length: count }, (_, index) =>
    aLeak({ valveId, takenAt: '2026-05-01T08:00:00Z', count: from + index }),
  )
  await server.expectOk('fitter', sendEvents, { body: { events } })
}

async function proved(server: TestServer) {
  await server.expectOk('fitter', proveChain)
  await expect.poll(async () => (await server.expectOk('fitter', showChain)).share, { timeout: 15_000 }).toBeNull()
  return server.expectOk('fitter', showChain)
}

it('before the first proof says how long the chain is, and nothing of it', async () => {
  const server = await aChain()
  const { chainHead: head } = (await server.store.read.site.findUnique({ where: { id: server.siteId } }))!
  const shown = await server.expectOk('engineer', showChain)
  expect(shown).toEqual({ entries: 3, head, share: null, fault: null, proof: null, lastSeal: null })
})

it('a chain that is whole is proved, its head is signed, and the next proof finds the signed head', async () => {
  const server = await aChain()
  const { proof, head, lastSeal } = await proved(server)
  expect(proof).toMatchObject({ isWhole: true, entries: 3, head, position: null, seals: 0 })
  expect(lastSeal).toEqual({ position: 3, madeAt: server.now.toISOString() })
  const { valveId } = await server.store.read.valve.findFirst({ select: { id: true } }).then((row) => ({ valveId: row!.id }))
  await leaksAt(server, valveId, 2, 4)
  const again = await proved(server)
  expect([again.proof?.isWhole, again.proof?.seals, again.lastSeal?.position]).toEqual([true, 1, 5])
})

it('an empty chain is whole, and nothing of it is signed', async () => {
  const server = await aServer()
  const { proof, lastSeal } = await proved(server)
  expect([proof?.isWhole, proof?.entries, lastSeal]).toEqual([true, 0, null])
})

it('a head that the register does not have is not signed, and no place is signed twice', async () => {
  const server = await aChain()
  const { store, siteId, now } = server
  const by = { siteId, personId: server.personIds.engineer }
  const key = await siteKey(store, 'secret', by, now)
  await sealHead(store, siteId, key, { position: 2, hash: '0'.repeat(64) }, now)
  await sealHead(store, siteId, key, { position: 9, hash: '0'.repeat(64) }, now)
  expect(await store.read.chainSeal.count()).toBe(0)
  const [second] = await store.chain.at(siteId, [2])
  await sealHead(store, siteId, key, second!, now)
  await sealHead(store, siteId, key, second!, new Date(now.getTime() + 1000))
  expect(await store.read.chainSeal.findMany({ select: { position: true, madeAt: true } })).toEqual([
    { position: 2, madeAt: now },
  ])
})

it('a signed head of a key that does not open any more still holds', async () => {
  const server = await aChain()
  const { store, siteId, now } = server
  const by = { siteId, personId: server.personIds.engineer }
  for (const [secret, position] of [
    ['old', 1],
    ['new', 2],
  ] as const) {
    const [place] = await store.chain.at(siteId, [position])
    await sealHead(store, siteId, await siteKey(store, secret, by, now), place!, now)
  }
  expect(await prove(store, siteId, () => {})).toMatchObject({ whole: true, seals: 2 })
})

it('nothing runs that could be cancelled, and then something does', async () => {
  const server = await aChain()
  expect(await server.expectOk('fitter', cancelProof)).toEqual({ cancelled: false })
  await server.expectOk('fitter', proveChain)
  expect(await server.expectOk('fitter', cancelProof)).toEqual({ cancelled: true })
  expect(await server.expectOk('fitter', showChain)).toMatchObject({ share: null, proof: null, fault: null, lastSeal: null })
})
