import { sendPhoto } from '@glandkeeper/contract/photos'
import { expect, it } from 'vitest'
import { call } from './client.ts'

it('a body of files goes out as a form with a file for each, and nothing else that lies beside them', async () => {
  let sent: RequestInit = {}
  const fetcher = (_: unknown, request?: RequestInit) => {
    sent = request ?? {}
    return Promise.resolve(Response.json({ outcome: 'kept' }))
  }
  const photo = { content: new Uint8Array([1, 2, 3]), thumbnail: new Uint8Array([4]), personId: 'somebody' }
  const answer = await call(sendPhoto, { params: { digest: 'a'.repeat(64) }, body: photo }, fetcher)
  expect(answer).toEqual({ outcome: 'kept' })
  expect(sent.headers).toBeUndefined()
  const files = [...(sent.body as FormData)] as [string, File][]
  const read = await Promise.all(files.map(async ([name, file]) => [name, ...new Uint8Array(await file.arrayBuffer())]))
  expect(read).toEqual([
    ['content', 1, 2, 3],
    ['thumbnail', 4],
  ])
})
