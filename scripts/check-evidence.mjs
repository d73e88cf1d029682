// node check-evidence.mjs FILE [FINGERPRINT]: is this export of evidence as it was signed, and by the key you know?
// Needs Node alone, no server and no register; docs/evidence.md says what it proves. Exit code 0: all is good.
import { createHash, createPublicKey, verify } from 'node:crypto'
import { readFileSync } from 'node:fs'

const [file, expected] = process.argv.slice(2)
let isGood = true

/** The twelve fields that are hashed; in this order they are in canonical JSON (RFC 8785). */
const HASHED = [
  'before',
  'body',
  'device',
  'id',
  'kind',
  'personId',
  'position',
  'receivedAt',
  'siteId',
  'takenAt',
  'valveId',
  'version',
]

try {
  const { payload, signature, publicKey } = JSON.parse(readFileSync(file, 'utf8'))
  const { chain, entries, site, madeAt } = JSON.parse(payload)
  console.log(`${site.name}, made ${madeAt}, ${entries.length} entries of a chain of ${chain.length}`)
  checkKey(publicKey)
  say(
    verify(null, Buffer.from(payload), publicKey, Buffer.from(signature, 'base64')),
    'the signature',
    'does not fit what is signed',
  )
  checkEntries(entries, site, chain)
} catch (error) {
  say(false, 'the file', `cannot be read as an export of evidence: ${error.message}`)
}
process.exitCode = isGood ? 0 : 1

function checkKey(publicKey) {
  const key = createPublicKey(publicKey)
  const fingerprint = createHash('sha256')
    .update(key.export({ type: 'spki', format: 'der' }))
    .digest('hex')
  if (expected === undefined) console.log(`      key ${fingerprint}: compare it with the one you wrote down`)
  else say(expected.toLowerCase() === fingerprint, `the key ${fingerprint}`, 'is another key than the one you named')
}

function checkEntries(entries, site, chain) {
  const altered = entries.find((entry) => entry.siteId !== site.id || hashOf(entry) !== entry.hash)
  say(altered === undefined, 'every hash follows from its entry', `: the entry at position ${altered?.position} was altered`)
  const unlinked = entries.find((entry, index) => !follows(entry, entries[index - 1]))
  say(
    unlinked === undefined,
    'neighbours are linked',
    `: the entry at position ${unlinked?.position} does not follow the one before`,
  )
  const end = entries.at(-1)
  const isHead = !end || end.position < chain.length || (end.position === chain.length && end.hash === chain.head)
  say(isHead, 'the chain has these entries', `: the entry at position ${end?.position} is not the head it names`)
}

function hashOf(entry) {
  const text = JSON.stringify(Object.fromEntries(HASHED.map((field) => [field, entry[field]])))
  return createHash('sha256').update(text).digest('hex')
}

function follows({ position, before }, last) {
  if (position === 1 && before !== '') return false
  if (!last) return true
  return position > last.position && (position > last.position + 1 || before === last.hash)
}

function say(holds, what, fault) {
  isGood &&= holds
  console.log(holds ? `good  ${what}` : `WRONG ${what} ${fault}`)
}
