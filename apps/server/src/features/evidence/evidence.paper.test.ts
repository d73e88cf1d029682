import { exportEvidence, printEvidence, showSiteKey } from '@glandkeeper/contract/evidence'
import { expect, it } from 'vitest'
import { anEvidenceRegister, payloadOf } from '../../../testing/evidence-register.ts'
import { type PrintedPage, printedPages } from '../../../testing/printed.ts'
import { printedEvidence, withCorrections } from './print.ts'

/** Lines are broken where the paper wants it: blanks say nothing. */
const saysOf = (pages: readonly PrintedPage[]) => pages.flatMap(({ pieces }) => pieces.map(({ says }) => says)).join(' ')
const flat = (text: string) => text.replaceAll(/\s+/gu, '')

it('says what it is of, the chain, the key, and each entry with its correction under it', async () => {
  const { server } = await anEvidenceRegister()
  const pages = await printedPages(await server.expectOk('fitter', printEvidence, { query: { tag: 'BH-1' } }))
  const { fingerprint } = await server.expectOk('fitter', showSiteKey)
  const { chain } = payloadOf(await server.expectOk('fitter', exportEvidence, { query: { tag: 'BH-1' } }))
  const text = flat(saysOf(pages))
  for (const part of [
    'valve BH-1: 4 entries',
    '5 entries',
    chain.head,
    fingerprint,
    'made by The fitter',
    '4 May 2026',
    '1 of 1',
  ])
    expect(text).toContain(flat(part))
  const [page] = pages
  const places = page!.pieces.filter(({ says, x }) => x < 25 && /^\d+$/.test(says)).map(({ says }) => says)
  expect(places).toEqual(['1', '2', '5', '3'])
  expect(text).toContain(flat('taken back'))
})

it('says of each entry when it was taken and received, and who did it beside who was signed in', async () => {
  const { server } = await anEvidenceRegister()
  const evidence = payloadOf(await server.expectOk('fitter', exportEvidence, { query: { tag: 'TF-1' } }))
  const times = { takenAt: '2026-03-02T07:10:00.000Z', receivedAt: '2026-04-05T06:20:00.000Z' }
  const body = JSON.stringify({ ...(JSON.parse(evidence.entries[0]!.body) as object), takenBy: 'D. Penhale' })
  const entries = [{ ...evidence.entries[0]!, ...times, body, person: 'Edda Marlow' }]
  const text = saysOf(await printedPages(await printedEvidence({ ...evidence, entries }, 'f'.repeat(64))))
  for (const part of ['2026-03-02 07:10', '2026-04-05 07:20', 'D. Penhale', 'entered by Edda Marlow, '])
    expect(flat(text)).toContain(flat(part))
})

it('a valve that is not there is refused in words, though a thread found out', async () => {
  const { server } = await anEvidenceRegister()
  const answer = await server.call('fitter', printEvidence, { query: { tag: 'BH-9' } })
  expect(answer).toMatchObject({ ok: false, problem: { code: 'valve/unknown', detail: 'BH-9' } })
})

it('nothing is wider than the paper, whatever a person wrote', async () => {
  const { server } = await anEvidenceRegister()
  const evidence = payloadOf(await server.expectOk('fitter', exportEvidence, { query: { tag: 'BH-1' } }))
  const wide = { tag: 'W'.repeat(40), device: 'M'.repeat(60), person: 'W'.repeat(80), says: 'm'.repeat(500) }
  const entries = evidence.entries.map((entry) => ({ ...entry, ...wide }))
  const scope = { tag: wide.tag }
  const pages = await printedPages(await printedEvidence({ ...evidence, scope, entries }, 'f'.repeat(64)))
  const tooFar = pages.flatMap(({ pieces }) => pieces.filter(({ x, width }) => x < 14 || x + width > 595.28 - 14))
  expect(tooFar).toEqual([])
})

it('prints the first two thousand, and says so', { timeout: 120_000 }, async () => {
  const { server } = await anEvidenceRegister()
  const evidence = payloadOf(await server.expectOk('fitter', exportEvidence, { query: { tag: 'TF-1' } }))
  const entries = Array.from({ length: 2_001 }, (_, index) => ({
    ...evidence.entries[0]!,
    id: `${index}`,
    position: 10_001 + index,
  }))
  const pages = await printedPages(await printedEvidence({ ...evidence, entries }, 'f'.repeat(64)))
  const text = saysOf(pages)
  expect(flat(text)).toContain(flat('Only the first 2000 of 2001 entries are on this paper'))
  expect(text).toContain('12000')
  expect(text).not.toContain('12001')
  expect(saysOf(pages.slice(-1))).toContain(`${pages.length} of ${pages.length}`)
})

it('a correction of what is not there stays in its place, and one that corrects itself ends', async () => {
  const { server, correction } = await anEvidenceRegister()
  const { entries } = payloadOf(await server.expectOk('fitter', exportEvidence, { query: { tag: 'BH-1' } }))
  expect(withCorrections(entries.slice(2)).map(({ position }) => position)).toEqual([3, 5])
  const ofItself = { ...entries[3]!, body: JSON.stringify({ ...correction, corrects: correction.id }) }
  expect(withCorrections([...entries.slice(0, 3), ofItself]).map(({ position }) => position)).toEqual([1, 2, 3, 5])
})
