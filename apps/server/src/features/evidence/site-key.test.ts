import { showSiteKey } from '@glandkeeper/contract/evidence'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { siteKey } from './site-key.ts'

const NOW = new Date('2026-05-04T09:00:00.000Z')

async function aSite() {
  const server = await aServer()
  return { ...server, by: { siteId: server.siteId, personId: server.personIds.engineer } }
}

it('is made once, however many ask at the same time, and noted without its secret', async () => {
  const { store, siteId, expectOk } = await aSite()
  const answers = await Promise.all(Array.from({ length: 8 }, () => expectOk('engineer', showSiteKey)))
  expect(new Set(answers.map(({ fingerprint }) => fingerprint)).size).toBe(1)
  const [row, ...more] = await store.read.siteKey.findMany({ where: { siteId } })
  expect(more).toEqual([])
  const notes = await store.read.registerChange.findMany({ where: { what: 'key for evidence made' } })
  expect(notes.map(({ subject, after }) => [subject, after])).toEqual([['site', `{"fingerprint":"${answers[0]!.fingerprint}"}`]])
  expect(row!.sealedKey).not.toContain('PRIVATE')
})

it('opens again with the same secret, and is made anew under another; the old public half stays', async () => {
  const { store, siteId, by } = await aSite()
  const first = await siteKey(store, 'one secret', by, NOW)
  expect((await siteKey(store, 'one secret', by, NOW)).id).toBe(first.id)
  const second = await siteKey(store, 'another secret', by, NOW)
  expect(second.publicKey).not.toBe(first.publicKey)
  const kept = await store.read.siteKey.findMany({ where: { siteId } })
  expect(kept.map(({ publicKey }) => publicKey).toSorted()).toEqual([first.publicKey, second.publicKey].toSorted())
  // Two servers with a secret each do not make keys by turns.
  expect((await siteKey(store, 'one secret', by, NOW)).id).toBe(first.id)
  expect((await siteKey(store, 'another secret', by, NOW)).id).toBe(second.id)
})

it('is not taken where somebody put another public half beside it, or its sealed half into another row', async () => {
  const { store, by } = await aSite()
  const [one, other] = [await siteKey(store, 'one', by, NOW), await siteKey(store, 'other', by, NOW)]
  await store.write(async (write) => {
    await write.siteKey.update({ where: { id: one.id }, data: { publicKey: other.publicKey } })
  })
  const third = await siteKey(store, 'one', by, NOW)
  expect([one.id, other.id]).not.toContain(third.id)
  const { sealedKey } = (await store.read.siteKey.findUnique({ where: { id: third.id } }))!
  await store.write(async (write) => {
    await write.siteKey.update({ where: { id: other.id }, data: { sealedKey, publicKey: third.publicKey } })
    await write.siteKey.delete({ where: { id: third.id } })
  })
  expect((await siteKey(store, 'one', by, NOW)).id).not.toBe(other.id)
})
