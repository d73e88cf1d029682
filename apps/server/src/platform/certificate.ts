import { createPrivateKey, X509Certificate } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { hostname, networkInterfaces } from 'node:os'
import path from 'node:path'
import { generate } from 'selfsigned'

const DAY_MILLISECONDS = 86_400_000
/** Browsers take no certificate that holds for longer. */
const DAYS = 397

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
  return { cert, key }
}

/**
 * A certificate this machine made for itself, for trial: kept in the data folder, made anew when it is about to run
 * out or the machine has another name or address.
 */
export async function selfMadeCertificate(
  dataFolder: string,
  now: Date,
  names: readonly string[] = namesOfThisMachine(),
): Promise<Certificate & { readonly isNew: boolean; readonly file: string }> {
  mkdirSync(dataFolder, { recursive: true })
  const file = path.join(dataFolder, 'certificate.pem')
  const keyFile = path.join(dataFolder, 'certificate-key.pem')
  if (existsSync(file) && existsSync(keyFile)) {
    const kept = { cert: readFileSync(file, 'utf8'), key: readFileSync(keyFile, 'utf8') }
    if (isGood(kept.cert, names, now)) return { ...kept, isNew: false, file }
  }
  const made = await generate([{ name: 'commonName', value: names[0] ?? 'localhost' }], {
    notBeforeDate: now,
    notAfterDate: new Date(now.getTime() + DAYS * DAY_MILLISECONDS),
    keyType: 'ec',
    curve: 'P-256',
    extensions: [
      { name: 'basicConstraints', cA: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: names.map((name) => (isAddress(name) ? { type: 7, ip: name } : { type: 2, value: name })),
      },
    ],
  })
  writeFileSync(keyFile, made.private, { mode: 0o600 })
  writeFileSync(file, made.cert)
  return { cert: made.cert, key: made.private, isNew: true, file }
}

function namesOfThisMachine(): string[] {
  const addresses = Object.values(networkInterfaces()).flatMap((each) => each ?? [])
  const own = addresses.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address)
  return [...new Set(['localhost', hostname(), '127.0.0.1', ...own])]
}

function isGood(cert: string, names: readonly string[], now: Date): boolean {
  try {
    const certificate = new X509Certificate(cert)
    const isKnown = (name: string) => (isAddress(name) ? certificate.checkIP(name) : certificate.checkHost(name)) !== undefined
    return Date.parse(certificate.validTo) - now.getTime() > DAY_MILLISECONDS && names.every(isKnown)
  } catch {
    return false
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
