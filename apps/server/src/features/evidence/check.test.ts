import { generateKeyPairSync, sign } from 'node:crypto'
import {
  checkEvidence as endpoint,
  type Evidence,
  type EvidenceCheck,
  type EvidencePayload,
  showSiteKey,
} from '@glandkeeper/contract/evidence'
import { describe, expect, it } from 'vitest'
import type { TestServer } from '../../../testing/a-server.ts'
import { anEvidenceRegister, exported, payloadOf } from '../../../testing/evidence-register.ts'
import { canonicalJson, hashOf } from '../../platform/chain.ts'
import { checkEvidence } from './check.ts'

const bytesOf = (evidence: unknown) => Buffer.from(JSON.stringify(evidence))
const checked = ({ store, siteId }: TestServer, evidence: unknown) => checkEvidence(store, siteId, bytesOf(evidence))
const failed = ({ checks }: EvidenceCheck) => checks.filter(({ isGood }) => !isGood).map(({ what, says }) => `${what}: ${says}`)

/** Of all entries of BH-1: places 1, 2, 3 and 5 of the chain. */
async function anExport() {
  const { server } = await anEvidenceRegister()
  return { server, evidence: await exported(server) }
}

/** The hash that an entry should have as it is now. */
const hashThatFits = (entry: EvidencePayload['entries'][number]) => hashOf(entry.before, entry)

function forged(evidence: Evidence, change: (payload: EvidencePayload) => void): Evidence {
  const payload = payloadOf(evidence)
  change(payload)
  return { ...evidence, payload: canonicalJson(payload) }
}

/** By somebody with a key of their own. */
function signedAnew({ payload }: Evidence): Evidence {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519')
  const signature = sign(null, Buffer.from(payload), privateKey).toString('base64')
  return { payload, signature, publicKey: publicKey.export({ type: 'spki', format: 'pem' }).toString() }
}

const SIGNATURE = 'The signature is good: The signature does not fit'
const KEY = 'The key is this site’s: The key with the fingerprint'
const HASHES = 'Every hash follows from its entry'
const LINKS = 'Neighbours are linked'
const REGISTER = 'The register holds the same entries'
const HEAD = 'The chain still has the head of that day'

it('an export as it was made is good in every way', async () => {
  const { server, evidence } = await anExport()
  const check = await checked(server, evidence)
  expect([failed(check), check.isGood, check.entries]).toEqual([[], true, 4])
  expect(check.checks.map(({ what }) => what)).toEqual([
    'It can be read',
    'The signature is good',
    'The key is this site’s',
    HASHES,
    LINKS,
    REGISTER,
    HEAD,
  ])
})

describe('an export that was altered is found out, and signed anew it still is', () => {
  it.each<[string, (payload: EvidencePayload) => void, string[]]>([
    ['one letter that no hash covers', (payload) => (payload.madeBy = 'the engineer'), []],
    [
      'what an entry says',
      ({ entries }) => (entries[2]!.body = entries[2]!.body.replace('8.7', '8.8')),
      [`${HASHES}: The entry at position 3, valve BH-1, was altered.`],
    ],
    [
      'an entry with a hash that fits',
      ({ entries }) => {
        entries[1]!.body = entries[1]!.body.replace('8.8', '8.9')
        entries[1]!.hash = hashThatFits(entries[1]!)
      },
      [
        `${LINKS}: The entry at position 3 does not follow the one before it.`,
        `${REGISTER}: Position 2, valve BH-1: the register has another entry there.`,
      ],
    ],
    [
      'an entry and all that follow, with hashes that fit',
      ({ entries, chain }) => {
        entries[0]!.body = entries[0]!.body.replace('8.9', '9.1')
        for (const [index, entry] of entries.entries()) {
          entry.before = entries[index - 1]?.hash ?? ''
          entry.hash = hashThatFits(entry)
        }
        chain.head = entries.at(-1)!.hash
      },
      [
        `${REGISTER}: Position 1, valve BH-1: the register has another entry there.`,
        `${HEAD}: Another hash stands at position 5: the chain was written anew since.`,
      ],
    ],
    [
      'the order',
      (payload) => (payload.entries = payload.entries.toReversed()),
      [`${LINKS}: The entry at position 3 does not follow the one before it.`],
    ],
    [
      'an entry twice',
      ({ entries }) => entries.push(entries[3]!),
      [`${LINKS}: The entry at position 5 does not follow the one before it.`],
    ],
    [
      'the head',
      ({ chain }) => (chain.head = 'f'.repeat(64)),
      [
        `${LINKS}: The entry at position 5 is not in the chain that the export names.`,
        `${HEAD}: Another hash stands at position 5: the chain was written anew since.`,
      ],
    ],
    [
      'the length of the chain',
      ({ chain }) => (chain.length = 9),
      [`${HEAD}: Nothing stands at position 9 any more: the chain was cut short since.`],
    ],
    [
      'a chain shorter than its entries',
      ({ chain }) => (chain.length = 3),
      [
        `${LINKS}: The entry at position 5 is not in the chain that the export names.`,
        `${HEAD}: Another hash stands at position 3: the chain was written anew since.`,
      ],
    ],
    [
      'the site it is of',
      ({ site }) => (site.id = '019a0000-0000-7000-8000-000000000009'),
      [
        `${HASHES}: The entry at position 1, valve BH-1, was altered.`,
        `${REGISTER}: It is of another site, Test mill: this register cannot say.`,
      ],
    ],
    [
      'a beginning that has something before it',
      ({ entries }) => {
        entries[0]!.before = 'f'.repeat(64)
        entries[0]!.hash = hashThatFits(entries[0]!)
      },
      [
        `${LINKS}: The entry at position 1 does not follow the one before it.`,
        `${REGISTER}: Position 1, valve BH-1: the register has another entry there.`,
      ],
    ],
  ])('%s', async (_, change, also) => {
    const { server, evidence: good } = await anExport()
    const evidence = forged(good, change)
    const found = await checked(server, evidence)
    expect([found.isGood, ...failed(found)]).toEqual([false, expect.stringContaining(SIGNATURE), ...also])
    const again = await checked(server, signedAnew(evidence))
    expect([again.isGood, ...failed(again)]).toEqual([false, expect.stringContaining(KEY), ...also])
  })
})

it('a key that was swapped alone spoils the signature, and is not this site’s', async () => {
  const { server, evidence } = await anExport()
  const check = await checked(server, { ...evidence, publicKey: signedAnew(evidence).publicKey })
  expect(failed(check)).toEqual([expect.stringContaining(SIGNATURE), expect.stringContaining(KEY)])
})

it('the export of another site names its key, and says that this register cannot tell', async () => {
  const [here, elsewhere] = [await anExport(), await anExport()]
  const { fingerprint } = await elsewhere.server.expectOk('fitter', showSiteKey)
  expect(failed(await checked(here.server, elsewhere.evidence))).toEqual([
    expect.stringContaining(fingerprint),
    `${REGISTER}: It is of another site, Test mill: this register cannot say.`,
  ])
})

it('without a register the fingerprint is told for comparing; with one that lacks the site, that it cannot tell', async () => {
  const [here, elsewhere] = [await anExport(), await anExport()]
  const { fingerprint } = await elsewhere.server.expectOk('fitter', showSiteKey)
  const alone = await checkEvidence(null, null, bytesOf(elsewhere.evidence))
  expect([alone.isGood, alone.checks[2]!.says]).toEqual([true, `Compare its fingerprint: ${fingerprint}.`])
  const lacking = await checkEvidence(here.server.store, null, bytesOf(elsewhere.evidence))
  expect(failed(lacking).at(-1)).toBe(`${REGISTER}: This register does not have the site: it cannot say.`)
})

describe('what is no export is answered in words', () => {
  it.each([
    ['nothing', ''],
    ['no JSON', 'PK\u0003\u0004'],
    ['brackets without end', '['.repeat(200_000)],
    ['JSON of something else', '{"a":1}'],
    ['no payload inside', JSON.stringify({ payload: 'x', signature: 'y', publicKey: 'z' })],
    ['another payload', JSON.stringify({ payload: '{"what":"glandkeeper evidence","entries":5}', signature: '', publicKey: '' })],
    ['bytes that are no text', Uint8Array.from([0xff, 0xfe, 0x00, 0x80])],
  ])('%s', async (_, content) => {
    const check = await checkEvidence(null, null, Buffer.from(content))
    expect(check).toMatchObject({ isGood: false, entries: 0, site: null, checks: [{ what: 'It can be read', isGood: false }] })
  })

  it('a letter that is none in the midst of it', async () => {
    const text = JSON.stringify({ payload: 'here: \u00ff', signature: '', publicKey: '' })
    const check = await checkEvidence(null, null, Buffer.from(text, 'latin1'))
    expect(check.checks[0]?.says).toMatch(/^The file is not JSON in UTF-8/)
  })

  it('more entries than an export has', async () => {
    const payload = JSON.stringify({ entries: Array.from({ length: 100_001 }, () => 0) })
    const check = await checkEvidence(null, null, bytesOf({ payload, signature: '', publicKey: '' }))
    expect(check.checks[0]).toMatchObject({ isGood: false, says: 'It has 100001 entries, more than an export has.' })
  })

  it('a key and a signature that are none', async () => {
    const { server, evidence } = await anExport()
    const check = await checked(server, { ...evidence, publicKey: 'no key', signature: '%%%' })
    expect(failed(check)).toEqual([
      expect.stringContaining(SIGNATURE),
      'The key is this site’s: What stands in place of a key is none.',
    ])
  })

  it('over the wire, whatever comes', async () => {
    const { server } = await anExport()
    for (const content of ['', '[[[[', '{}']) {
      const check = await server.expectOk('fitter', endpoint, { body: Buffer.from(content) })
      expect(check.isGood).toBe(false)
    }
  })
})
