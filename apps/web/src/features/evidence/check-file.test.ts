import { checkEvidence } from '@glandkeeper/contract/evidence'
import { expect, it } from 'vitest'
import { call } from '../../platform/client.ts'

it('a file to check goes out byte for byte as it was chosen', async () => {
  let sent: RequestInit = {}
  const fetcher = (_: unknown, request?: RequestInit) => {
    sent = request ?? {}
    return Promise.resolve(Response.json({ checks: [], isGood: false, entries: 0, madeAt: null, site: null }))
  }
  const file = new Uint8Array([0xef, 0xbb, 0xbf, 0x7b, 0x0d, 0x0a, 0x7d])
  await call(checkEvidence, { body: file }, fetcher)
  expect(sent.headers).toEqual({ 'content-type': 'application/octet-stream' })
  expect(sent.body).toEqual(file)
})
