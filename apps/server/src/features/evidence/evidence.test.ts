import { checkEvidence, countEvidence, exportEvidence, exportEvidenceCsv } from '@glandkeeper/contract/evidence'
import { sendEvents } from '@glandkeeper/contract/events'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { parse } from 'csv-parse/sync'
import { expect, it } from 'vitest'
import { anEvidenceRegister, exported, payloadOf } from '../../../testing/evidence-register.ts'
import { add } from '../../../testing/valves-alike.ts'
import { canonicalJson, hashOf } from '../../platform/chain.ts'
import { fileName } from './index.ts'

it('an export of everything has each entry as the chain has it, and is found good', async () => {
  const { server, readings } = await anEvidenceRegister()
  const evidence = await exported(server, {})
  const { entries, chain, site, madeBy } = payloadOf(evidence)
  expect([site.name, madeBy, chain.length, entries.length]).toEqual(['Test mill', 'The engineer', 5, 5])
  expect(evidence.payload).toBe(canonicalJson(JSON.parse(evidence.payload)))
  for (const [index, entry] of entries.entries()) {
    expect(entry.before).toBe(entries[index - 1]?.hash ?? '')
    expect(hashOf(entry.before, entry)).toBe(entry.hash)
  }
  expect(entries[1]).toMatchObject({ id: readings[1]!.id, tag: 'BH-1', person: 'The fitter', standsAs: 'taken back' })
  expect(entries[1]!.says).toContain('Gap 9.0')
  expect(entries.map(({ standsAs }) => standsAs)).toEqual(['as entered', 'taken back', 'as entered', 'as entered', 'correction'])
  const check = await server.expectOk('fitter', checkEvidence, { body: Buffer.from(JSON.stringify(evidence)) })
  expect([check.isGood, check.entries, check.site]).toEqual([true, 5, 'Test mill'])
})

it('counts before it exports, and refuses in words what is not there', async () => {
  const { server } = await anEvidenceRegister()
  expect(await server.expectOk('fitter', countEvidence, { query: { area: 'BH' } })).toEqual({ entries: 4 })
  for (const query of [{ tag: 'BH-9' }, { area: 'ZZ' }]) {
    const answer = await server.call('engineer', exportEvidence, { query })
    expect(answer).toMatchObject({ ok: false, status: 404 })
  }
})

it('names the file by what is in it, and signs the head once', async () => {
  const { server } = await anEvidenceRegister()
  const headerOf = async (url: string) =>
    (await server.app.inject({ url, headers: { cookie: server.cookieOf('engineer') } })).headers['content-disposition']
  expect(await headerOf('/api/evidence/export.json?tag=BH-1')).toBe('attachment; filename="evidence-BH-1-2026-05-04.json"')
  expect(await headerOf('/api/evidence/export.csv?tag=TF-1')).toBe('attachment; filename="evidence-TF-1-2026-05-04.csv"')
  expect(fileName({ tag: 'Ü 7/a b', to: '2026-01-02' }, '2026-05-04')).toBe('evidence--7-a-b-begin-to-2026-01-02-2026-05-04')
  expect(fileName({}, '2026-05-04')).toBe('evidence-all-2026-05-04')
  expect(await server.store.read.chainSeal.findMany({ select: { position: true } })).toEqual([{ position: 5 }])
})

it('a spreadsheet has a row for each entry, who it was, and what it puts right', async () => {
  const { server, readings } = await anEvidenceRegister()
  const rowsOf = async (tag: string) =>
    parse(await server.expectOk('engineer', exportEvidenceCsv, { query: { tag } }), {
      bom: true,
      columns: true,
    }) as Record<string, string>[]
  const rows = await rowsOf('BH-1')
  expect(rows.map((row) => row['place in the chain'])).toEqual(['1', '2', '3', '5'])
  expect(rows[3]).toMatchObject({ 'puts right': '2', 'how it stands': 'correction' })
  expect(rows[1]).toMatchObject({ id: readings[1]!.id, 'how it stands': 'taken back' })
  const [leak] = await rowsOf('TF-1')
  expect(leak).toMatchObject({ who: 'J. Marsh', 'signed in as': 'The fitter', valve: 'TF-1', kind: 'leak.seen' })
})

it('a cell that begins like a formula stays text', async () => {
  const { server } = await anEvidenceRegister()
  const { valveId } = await add(server, { tag: 'BH-2' })
  const leak = aLeak({ valveId, takenAt: '2026-04-02T23:30:00Z', device: '=1+1', takenBy: '@SUM(A1)' })
  await server.expectOk('fitter', sendEvents, { body: { events: [leak] } })
  const csv = await server.expectOk('engineer', exportEvidenceCsv, { query: { tag: 'BH-2' } })
  const [row] = parse(csv, { bom: true, columns: true }) as Record<string, string>[]
  expect([row!.device, row!.who]).toEqual(["'=1+1", "'@SUM(A1)"])
})
