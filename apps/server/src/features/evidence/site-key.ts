import { generateKeyPairSync, type KeyObject } from 'node:crypto'
import type { SiteKeyModel } from '../../generated/sqlite/models.ts'
import type { By } from '../../platform/site-work.ts'
import { newId } from '../../platform/ids.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Store, Write } from '../../platform/store.ts'
import { fingerprintOf, openedKey, pemOf, sealedKey } from './sealed-key.ts'

export interface SiteKey {
  readonly id: string
  /** In PEM. */
  readonly publicKey: string
  readonly privateKey: KeyObject
  readonly madeAt: Date
}

/** The key this server signs with for a site: made when it is first needed, and anew where its secret is another. */
export async function siteKey(store: Store, secret: string, by: By, now: Date): Promise<SiteKey> {
  return (
    (await keyThatOpens(store.read, by.siteId, secret)) ??
    // Looked for again where nobody else writes: two exports at once must not make two keys.
    store.write(async (write) => (await keyThatOpens(write, by.siteId, secret)) ?? makeKey(write, secret, by, now))
  )
}

/** Of several the newest that opens: each server of a register may have a secret of its own. */
async function keyThatOpens(read: Pick<Read, 'siteKey'>, siteId: string, secret: string): Promise<SiteKey | null> {
  const rows = await read.siteKey.findMany({ where: { siteId }, orderBy: [{ madeAt: 'desc' }, { id: 'desc' }] })
  for (const row of rows) {
    const key = opened(row, secret)
    if (key) return key
  }
  return null
}

function opened({ id, publicKey, sealedKey: sealed, madeAt }: SiteKeyModel, secret: string): SiteKey | null {
  const privateKey = openedKey(sealed, secret, id)
  // A public half that somebody put there would prove nothing that is signed.
  return privateKey && pemOf(privateKey) === publicKey ? { id, publicKey, privateKey, madeAt } : null
}

async function makeKey(write: Write, secret: string, by: By, now: Date): Promise<SiteKey> {
  const { siteId } = by
  const { privateKey } = generateKeyPairSync('ed25519')
  const key = { id: newId(), publicKey: pemOf(privateKey), madeAt: now }
  await write.siteKey.create({ data: { ...key, siteId, sealedKey: sealedKey(privateKey, secret, key.id) } })
  const after = { fingerprint: fingerprintOf(key.publicKey) }
  await noteChange(write, by, { subject: 'site', subjectId: siteId, what: 'key for evidence made', before: {}, after }, now)
  return { ...key, privateKey }
}
