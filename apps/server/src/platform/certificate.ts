import { createPrivateKey, X509Certificate } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { hostname, networkInterfaces } from 'node:os'
import path from 'node:path'
import { createSecureContext } from 'node:tls'
import { domainToASCII } from 'node:url'

const DAY_MILLISECONDS = 86_400_000
/** Browsers take no certificate that holds for longer. */
const DAYS = 397
/** By this name it stands in a phone's list of what is trusted, and by it the server knows its own. */
const OWN_NAME = 'Glandkeeper for trial on'

export interface Certificate {
  readonly cert: string
  readonly key: string
}

/** A certificate and its key from two files; throws in words what is wrong with them. */
export function givenCertificate(certFile: string, keyFile: string, now: Date): Certificate {
  const cert = textOf(certFile, 'certificate')
  const key = textOf(keyFile, 'key')
  const certificate = parsed(() => new X509Certificate(cert), `${certFile} holds no certificate in PEM form`)
  const privateKey = parsed(() => createPrivateKey(key), `${keyFile} holds no private key in PEM form, or one with a password`)
  if (!certificate.checkPrivateKey(privateKey)) throw new Error(`${keyFile} is not the key of the certificate in ${certFile}`)
  if (Date.parse(certificate.validTo) < now.getTime())
    throw new Error(`the certificate in ${certFile} ran out on ${certificate.validTo}`)
  // What only TLS itself finds, as a broken certificate further down the chain.
  parsed(() => createSecureContext({ cert, key }), `${certFile} and ${keyFile} cannot be used for https`)
  return { cert, key }
}

export interface SelfMade extends Certificate {
  readonly isNew: boolean
  readonly file: string
  readonly keyFile: string
}

/**
 * A certificate this machine made for itself, for trial: kept in the data folder, made anew when it is about to run
 * out, has lost its key, or the machine has another name or address. Files that were not made here are never written over.
 */
export async function selfMadeCertificate(
  dataFolder: string,
  now: Date,
  names: readonly string[] = namesOfThisMachine(),
): Promise<SelfMade> {
  mkdirSync(dataFolder, { recursive: true })
  const file = path.join(dataFolder, 'certificate.pem')
  const keyFile = path.join(dataFolder, 'certificate-key.pem')
  if (existsSync(file)) {
    if (!isOurs(file))
      throw new Error(`${file} was not made here, and would be written over: give it with --cert and --key, or move it away`)
    const kept = keptIn(file, keyFile, names, now)
    if (kept) {
      chmodSync(keyFile, 0o600)
      return { ...kept, isNew: false, file, keyFile }
    }
  }
  const made = await madeAnew(names, now)
  // The certificate first: a key that stands alone is never taken for ours.
  writeFileSync(file, made.cert, { mode: 0o600 })
  writeFileSync(keyFile, made.private, { mode: 0o600 })
  // The mode above is for a new file only: one that was there keeps its own.
  chmodSync(keyFile, 0o600)
  return { cert: made.cert, key: made.private, isNew: true, file, keyFile }
}

async function madeAnew(names: readonly string[], now: Date) {
  // Loaded where one is made: it takes a seventh of a second of a start.
  const { generate } = await import('selfsigned')
  const machine = names.find((name) => name !== 'localhost' && !isAddress(name)) ?? 'this machine'
  return generate([{ name: 'commonName', value: `${OWN_NAME} ${machine}`.slice(0, 64) }], {
    notBeforeDate: now,
    notAfterDate: new Date(now.getTime() + DAYS * DAY_MILLISECONDS),
    keyType: 'ec',
    curve: 'P-256',
    // Left to itself the library signs with SHA-1, which browsers refuse.
    algorithm: 'sha256',
    extensions: [
      // Phones install nothing as trusted that does not call itself an authority.
      { name: 'basicConstraints', cA: true, critical: true },
      { name: 'keyUsage', digitalSignature: true, keyCertSign: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: names.map((name) => (isAddress(name) ? { type: 7, ip: name } : { type: 2, value: name })),
      },
    ],
  })
}

/** Said at every start: what it is, how a phone comes to trust it, and what that costs. */
export function selfMadeInWords({ cert, isNew, file, keyFile }: SelfMade): string[] {
  const { subjectAltName, validTo, fingerprint256 } = new X509Certificate(cert)
  const names = subjectAltName?.replaceAll(/DNS:|IP Address:/g, '') ?? ''
  return [
    `${isNew ? 'made' : 'using'} a certificate of this machine's own, for trial: ${file}, for ${names}, until ${validTo}`,
    `its SHA-256 fingerprint is ${fingerprint256}`,
    `to trust it on a phone: carry ${file} there, compare the fingerprint, install it as a trusted certificate ` +
      'authority, and turn on full trust where the phone asks for that apart',
    `keep ${keyFile} here: whoever has it can pass for any site to that phone; take the trust away after the trial`,
    'for good use give --cert and --key, or put a proxy with HTTPS in front',
  ]
}

/** IPv4 only: many machines change their IPv6 addresses daily, and each change would have to be trusted anew. */
export function namesOfThisMachine(machine = hostname(), interfaces = networkInterfaces()): string[] {
  const addresses = Object.values(interfaces).flatMap((each) => each ?? [])
  const own = addresses.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address)
  // As browsers ask for it; empty where no address could be made of it.
  const asked = domainToASCII(machine)
  return [...new Set(['localhost', ...(asked === '' ? [] : [asked]), '127.0.0.1', ...own])]
}

function isOurs(file: string): boolean {
  try {
    return new X509Certificate(readFileSync(file)).subject.startsWith(`CN=${OWN_NAME}`)
  } catch {
    return false
  }
}

/** Null where it has to be made anew. */
function keptIn(file: string, keyFile: string, names: readonly string[], now: Date): Certificate | null {
  try {
    const kept = givenCertificate(file, keyFile, new Date(now.getTime() + DAY_MILLISECONDS))
    const certificate = new X509Certificate(kept.cert)
    const isKnown = (name: string) => (isAddress(name) ? certificate.checkIP(name) : certificate.checkHost(name)) !== undefined
    return names.every(isKnown) ? kept : null
  } catch {
    return null
  }
}

function isAddress(name: string): boolean {
  return /^\d+\.\d+\.\d+\.\d+$/.test(name)
}

function textOf(file: string, what: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch (cause) {
    throw new Error(`the file of the ${what} cannot be read: ${file}`, { cause })
  }
}

function parsed<T>(read: () => T, fault: string): T {
  try {
    return read()
  } catch (cause) {
    throw new Error(fault, { cause })
  }
}
