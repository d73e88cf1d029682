import { generateKeyPairSync, sign } from 'node:crypto'
import { writeFileSync } from 'node:fs'
import path from 'node:path'
import type { Evidence, EvidencePayload } from '@glandkeeper/contract/evidence'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../apps/server/src/platform/chain.ts'
import { aFolder, anEmptyFolder, checkAlone, forge, rehash, verify } from './a-forged-register.ts'

/** Each starts processes of its own; a machine that runs every test at once takes many seconds for it. */
const SLOW_MACHINE = 120_000

async function anExport(): Promise<{ folder: string; evidence: Evidence; saved: (evidence: unknown) => string }> {
  const { folder, evidence } = await aFolder({ isExported: true })
  if (evidence === null) throw new Error('nothing was exported')
  const saved = (content: unknown) => {
    const file = path.join(folder, 'evidence.json')
    writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content))
    return file
  }
  return { folder, evidence, saved }
}

function forged(evidence: Evidence, change: (payload: EvidencePayload) => void): Evidence {
  const payload = JSON.parse(evidence.payload) as EvidencePayload
  change(payload)
  return { ...evidence, payload: canonicalJson(payload) }
}

function signedAnew({ payload }: Evidence): Evidence {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519')
  const signature = sign(null, Buffer.from(payload), privateKey).toString('base64')
  return { payload, signature, publicKey: publicKey.export({ type: 'spki', format: 'pem' }).toString() }
}

describe('npm run verify with an export', { timeout: SLOW_MACHINE }, () => {
  it('finds it good beside its register', async () => {
    const { folder, evidence, saved } = await anExport()
    const { status, said } = verify(folder, saved(evidence))
    expect([status, said.match(/^good /gm)?.length]).toEqual([0, 7])
  })

  it('and where there is no register', async () => {
    const { evidence, saved } = await anExport()
    const alone = verify(anEmptyFolder(), saved(evidence))
    expect([alone.status, alone.said.match(/^good /gm)?.length]).toEqual([0, 5])
    expect(alone.said).toContain('There is no register here')
  })

  it('tells where the register no longer says the same', async () => {
    const { folder, evidence, saved } = await anExport()
    forge(folder, (database) => {
      database.exec("UPDATE event SET body = replace(body, '9', '8') WHERE position = 2")
    })
    const altered = verify(folder, saved(evidence))
    expect(altered.status).toBe(1)
    expect(altered.said).toContain('Position 2, valve BH-1: the register’s own entry was altered since')
    forge(folder, rehash)
    const anew = verify(folder, saved(evidence))
    expect(anew.said).toContain('Position 2, valve BH-1: the register has another entry there')
    expect(anew.said).toContain('Another hash stands at position 3: the chain was written anew since')
  })

  it('says in words what is no export', async () => {
    const { folder, saved } = await anExport()
    const { status, said } = verify(folder, saved('PK'))
    expect([status, said]).toEqual([1, expect.stringMatching(/^WRONG {2}It can be read: The file is not JSON/)])
  })
})

describe('the check that needs nothing of ours', { timeout: SLOW_MACHINE }, () => {
  it('finds an export good, and tells the fingerprint to compare', async () => {
    const { evidence, saved } = await anExport()
    const file = saved(evidence)
    const { status, said } = checkAlone(file)
    expect([status, said]).toEqual([0, expect.stringMatching(/key [0-9a-f]{64}/)])
    const fingerprint = /key ([0-9a-f]{64})/.exec(said)![1]!
    expect(checkAlone(file, fingerprint).status).toBe(0)
    expect(checkAlone(file, '0'.repeat(64))).toMatchObject({ status: 1, said: expect.stringContaining('another key') as string })
  })

  it.each<[string, (payload: EvidencePayload) => void, string]>([
    ['its first words', (payload) => (payload.madeBy = 'somebody'), 'signature'],
    ['an entry', ({ entries }) => (entries[1]!.device = 'another'), 'position 2 was altered'],
    ['the order', (payload) => (payload.entries = payload.entries.toReversed()), 'position 2 does not follow'],
    [
      'an entry left out',
      ({ entries, chain }) => {
        entries.pop()
        chain.length = 2
      },
      'position 2 is not the head',
    ],
  ])('finds %s altered, and signed anew by another key', async (_, change, named) => {
    const { evidence, saved } = await anExport()
    const file = saved(evidence)
    const fingerprint = /key ([0-9a-f]{64})/.exec(checkAlone(file).said)![1]!
    const altered = forged(evidence, change)
    const found = checkAlone(saved(altered), fingerprint)
    expect([found.status, found.said]).toEqual([1, expect.stringContaining('signature')])
    expect(found.said).toContain(named)
    const again = checkAlone(saved(signedAnew(altered)), fingerprint)
    expect([again.status, again.said]).toEqual([1, expect.stringContaining('another key')])
  })

  it('says in words what is no export', async () => {
    const { saved } = await anExport()
    for (const content of ['', 'PK', '{}', '{"payload":"{}","signature":"","publicKey":""}'])
      expect(checkAlone(saved(content))).toMatchObject({ status: 1, said: expect.stringMatching(/^WRONG/) as string })
    expect(checkAlone('no such file').status).toBe(1)
  })
})
