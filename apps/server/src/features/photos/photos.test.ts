import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { sendEvents } from '@glandkeeper/contract/events'
import { photoLimits, sendPhoto, showPhoto, showThumbnail } from '@glandkeeper/contract/photos'
import { showValve, addValve } from '@glandkeeper/contract/valves'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aJpeg, digestOf } from '../../../testing/a-jpeg.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'

const content = aJpeg({ width: 1600, height: 1200, dataLength: 5000 })
const thumbnail = aJpeg({ width: 240, height: 180 })
const digest = digestOf(content)

/** What became of a photo under its own digest. */
async function outcomeOf(server: TestServer, body: BodyIn<typeof sendPhoto>): Promise<string> {
  const answer = await server.call('fitter', sendPhoto, { params: { digest: digestOf(body.content) }, body })
  return answer.ok ? answer.value.outcome : `${answer.problem.code}: ${answer.problem.detail}`
}

describe('a photo', () => {
  it('is kept under its digest with size, who and when, and read back byte by byte', async () => {
    const server = await aServer()
    expect(await outcomeOf(server, { content, thumbnail })).toBe('kept')
    expect(await server.expectOk('planner', showPhoto, { params: { digest } })).toEqual(Buffer.from(content))
    expect(await server.expectOk('engineer', showThumbnail, { params: { digest } })).toEqual(Buffer.from(thumbnail))
    expect(await server.store.read.photo.findMany({ omit: { content: true, thumbnail: true } })).toEqual([
      {
        siteId: server.siteId,
        digest,
        type: 'image/jpeg',
        width: 1600,
        height: 1200,
        personId: server.personIds.fitter,
        receivedAt: server.now,
      },
    ])
  })

  it('sent again is already there: the first stays, with its thumbnail', async () => {
    const server = await aServer()
    await outcomeOf(server, { content, thumbnail })
    expect(await outcomeOf(server, { content, thumbnail: aJpeg({ width: 100, height: 75 }) })).toBe('already')
    expect(await server.expectOk('fitter', showThumbnail, { params: { digest } })).toEqual(Buffer.from(thumbnail))
    expect(await server.store.read.photo.count()).toBe(1)
  })

  it('sent twice at once is one photo', async () => {
    const server = await aServer()
    const both = await Promise.all([outcomeOf(server, { content, thumbnail }), outcomeOf(server, { content, thumbnail })])
    expect(both.toSorted()).toEqual(['already', 'kept'])
  })

  it('may come long after the entry that names it, or before: neither waits for the other', async () => {
    const server = await aServer()
    const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
    const leak = aLeak({ valveId, takenAt: '2026-05-03T07:10:00Z', photos: [digest] })
    const { outcomes } = await server.expectOk('fitter', sendEvents, { body: { events: [leak] } })
    expect(outcomes).toMatchObject([{ outcome: 'accepted' }])
    const before = await server.call('fitter', showThumbnail, { params: { digest } })
    expect(before).toMatchObject({ ok: false, status: 404, problem: { code: 'photo/unknown' } })
    expect(await outcomeOf(server, { content, thumbnail })).toBe('kept')
    const { timeline } = await server.expectOk('fitter', showValve, { params: { tag: 'BH-1' } })
    expect(timeline[0]?.event.photos).toEqual([digest])
  })

  it('is never served to another site, which may keep the same picture for itself', async () => {
    const server = await aServer()
    await outcomeOf(server, { content, thumbnail })
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other mill', timeZone: 'Europe/London', createdAt: server.now } })
      await write.person.update({ where: { signInName: 'fitter' }, data: { siteId: 'other' } })
    })
    for (const shown of [showPhoto, showThumbnail])
      expect(await server.call('fitter', shown, { params: { digest } })).toMatchObject({ ok: false, status: 404 })
    expect(await outcomeOf(server, { content, thumbnail })).toBe('kept')
    expect(await server.store.read.photo.count()).toBe(2)
  })

  it('is sent as a picture and nothing else, and stays in the browser of whoever may see it', async () => {
    const server = await aServer()
    await outcomeOf(server, { content, thumbnail })
    for (const url of [`/api/photos/${digest}`, `/api/photos/${digest}/thumbnail`]) {
      const { headers } = await server.app.inject({ url, headers: { cookie: server.cookieOf('fitter') } })
      expect(headers).toMatchObject({
        'content-type': 'image/jpeg',
        'cache-control': 'private, max-age=31536000, immutable',
        'x-content-type-options': 'nosniff',
      })
    }
    const missing = await server.app.inject({
      url: `/api/photos/${'0'.repeat(64)}`,
      headers: { cookie: server.cookieOf('fitter') },
    })
    expect(missing.headers['cache-control']).toBeUndefined()
  })

  it('is read while a write is under way', async () => {
    const server = await aServer()
    await outcomeOf(server, { content, thumbnail })
    let finish = (): void => {}
    const writing = server.store.write(() => new Promise<void>((resolve) => (finish = resolve)))
    expect(await server.expectOk('fitter', showPhoto, { params: { digest } })).toHaveLength(content.length)
    finish()
    await writing
  })
})

describe('what is sent as a photo and is none', () => {
  const text = (words: string) => new Uint8Array(Buffer.from(words))
  const bytes = (base64: string) => new Uint8Array(Buffer.from(base64, 'base64'))
  const page = '<!doctype html><script>alert(1)</script>'
  const notJpeg: [string, Uint8Array<ArrayBuffer>][] = [
    [
      'PNG',
      bytes('iVBORw0KGgoAAAANSUhEUgAAAAYAAAAEAQMAAACXytwAAAAAA1BMVEX/AAAZ4gk3AAAAC0lEQVQI12NggAAAAAgAAS8g3TEAAAAASUVORK5CYII='),
    ],
    ['WebP', bytes('UklGRjwAAABXRUJQVlA4IDAAAADQAQCdASoGAAQAAgA0JaACdLoB+AADsAD+8MQL/yC5YXXI1/8gP+QH/ID/+PIAAAA=')],
    ['SVG', text('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')],
    ['HTML', text(page)],
    ['HTML after the mark of a JPEG', new Uint8Array([0xff, 0xd8, 0xff, ...text(page)])],
    ['a JPEG with HTML behind it', new Uint8Array([...content, ...text(page)])],
    ['a JPEG cut off', content.subarray(0, -1)],
    ['nothing', new Uint8Array()],
  ]

  it.each(notJpeg)('%s is refused, as the photo and as the thumbnail, and nothing is kept', async (_, disguised) => {
    const server = await aServer()
    expect(await outcomeOf(server, { content: disguised, thumbnail })).toMatch(/^photo\/not-a-jpeg: the photo/)
    expect(await outcomeOf(server, { content, thumbnail: disguised })).toMatch(/^photo\/not-a-jpeg: the thumbnail/)
    expect(await server.store.read.photo.count()).toBe(0)
  })

  it('bytes that are not those of the digest are refused', async () => {
    const server = await aServer()
    const answer = await server.call('fitter', sendPhoto, { params: { digest }, body: { content: thumbnail, thumbnail } })
    expect(answer).toMatchObject({ ok: false, status: 422, problem: { code: 'photo/digest-differs' } })
    const short = await server.call('fitter', sendPhoto, { params: { digest: 'abc' }, body: { content, thumbnail } })
    expect(short).toMatchObject({ ok: false, problem: { code: 'request/invalid', errors: [{ pointer: '#params/digest' }] } })
  })

  it('3 MB, 4096 pixels and a thumbnail of 60 kB and 400 pixels are kept; one more of any is too large', async () => {
    const server = await aServer()
    const { mostBytes } = photoLimits
    const overhead = aJpeg({ dataLength: 0 }).length
    const large = (size: number, width = 4096) => aJpeg({ width, height: 4096, dataLength: size - overhead })
    const small = (size: number, width = 400) => aJpeg({ width, height: 400, dataLength: size - overhead })
    expect(await outcomeOf(server, { content: large(mostBytes), thumbnail: small(60_000) })).toBe('kept')
    for (const body of [
      { content: large(mostBytes + 1), thumbnail },
      { content: large(5000, 4097), thumbnail },
      { content, thumbnail: small(60_001) },
      { content, thumbnail: small(5000, 401) },
    ])
      expect(await outcomeOf(server, body)).toMatch(/^photo\/too-large: the (photo|thumbnail)/)
    expect(await outcomeOf(server, { content: large(5_000_000), thumbnail })).toMatch(/^request\/too-large/)
  })
})

describe('a body that is no form of two files', () => {
  const form = (parts: string) => parts.replaceAll('\n', '\r\n')
  const file = (name: string) => `--x\nContent-Disposition: form-data; name="${name}"; filename="f"\n\nz\n`
  const put = async (payload: string | Buffer, type = 'multipart/form-data; boundary=x', url = `/api/photos/${digest}`) => {
    const server = await aServer()
    const method = url.startsWith('/api/photos') ? 'PUT' : 'POST'
    const headers = { cookie: server.cookieOf('fitter'), 'content-type': type }
    const problem = (await server.app.inject({ method, url, headers, payload })).json<{ code: string; errors?: object[] }>()
    return { code: problem.code, faults: problem.errors?.length ?? 0 }
  }

  it.each([
    ['no form at all', 'nothing', 'request/malformed'],
    ['text in place of a file', `--x\nContent-Disposition: form-data; name="content"\n\nz\n--x--\n`, 'request/malformed'],
    ['two files of one name', `${file('content')}${file('content')}--x--\n`, 'request/malformed'],
    [
      'more files than any form has',
      `${Array.from({ length: 1000 }, (_, index) => file(`a${index}`)).join('')}--x--\n`,
      'request/malformed',
    ],
    ['one file', `${file('content')}--x--\n`, 'request/invalid'],
    ['a third file', `${file('content')}${file('thumbnail')}${file('__proto__')}--x--\n`, 'request/invalid'],
  ])('%s is refused by name', async (_, parts, code) => {
    expect(await put(form(parts))).toMatchObject({ code })
  })

  it('a picture alone, JSON, or a form where JSON is read, is content not read there', async () => {
    expect(await put(Buffer.from(content), 'image/jpeg')).toMatchObject({ code: 'request/unsupported' })
    expect(await put('{}', 'application/json')).toMatchObject({ code: 'request/unsupported' })
    const whole = form(`${file('events')}--x--\n`)
    expect(await put(whole, 'multipart/form-data; boundary=x', '/api/events')).toEqual({ code: 'request/unsupported', faults: 0 })
    expect(await put('a,b', 'text/csv', '/api/events')).toEqual({ code: 'request/unsupported', faults: 0 })
  })
})
