import {
  createCipheriv,
  createDecipheriv,
  createPrivateKey,
  createPublicKey,
  hash,
  hkdfSync,
  type KeyObject,
  randomBytes,
} from 'node:crypto'

const CIPHER = 'aes-256-gcm'
/** Bytes, as NIST SP 800-38D has them for GCM. */
const IV = 12
const TAG = 16

/** The private half of a key as the register keeps it: whoever has a copy of the register cannot sign with it. */
export function sealedKey(privateKey: KeyObject, secret: string, keyId: string): string {
  const iv = randomBytes(IV)
  const cipher = createCipheriv(CIPHER, keyUnder(secret, keyId), iv)
  const der = privateKey.export({ type: 'pkcs8', format: 'der' })
  const sealed = [cipher.update(der), cipher.final()]
  return Buffer.concat([iv, cipher.getAuthTag(), ...sealed]).toString('base64')
}

/** Null where the secret of the server is another than it was sealed under, or the row was altered. */
export function openedKey(sealed: string, secret: string, keyId: string): KeyObject | null {
  const bytes = Buffer.from(sealed, 'base64')
  try {
    const cipher = createDecipheriv(CIPHER, keyUnder(secret, keyId), bytes.subarray(0, IV), { authTagLength: TAG })
    cipher.setAuthTag(bytes.subarray(IV, IV + TAG))
    const der = Buffer.concat([cipher.update(bytes.subarray(IV + TAG)), cipher.final()])
    return createPrivateKey({ key: der, type: 'pkcs8', format: 'der' })
  } catch {
    return null
  }
}

/** The id of the key is part of it: a sealed half put into another row does not open. */
function keyUnder(secret: string, keyId: string): Buffer {
  return Buffer.from(hkdfSync('sha256', secret, keyId, 'glandkeeper key for evidence', 32))
}

export function pemOf(key: KeyObject): string {
  return createPublicKey(key).export({ type: 'spki', format: 'pem' }).toString()
}

/** SHA-256 of the public half in DER, in hex: what people compare. */
export function fingerprintOf(publicKey: string): string {
  return hash('sha256', createPublicKey(publicKey).export({ type: 'spki', format: 'der' }), 'hex')
}
