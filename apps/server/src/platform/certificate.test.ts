import { X509Certificate } from 'node:crypto'
import { chmodSync, copyFileSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import https from 'node:https'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { buildApp } from '../app.ts'
import { aDatabase, aStore } from '../../testing/a-store.ts'
import { givenCertificate, namesOfThisMachine, selfMadeCertificate, selfMadeInWords } from './certificate.ts'

const now = new Date()
function aFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-certificate-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}
const names = ['localhost', 'mill-server', '127.0.0.1', '10.1.2.3']

/** A whole server over https, asked as a browser that trusts its certificate would. */
async function healthOver(https_: { cert: string; key: string }): Promise<{ status: number | undefined; headers: object }> {
  const databaseUrl = await aDatabase()
  const store = await aStore(databaseUrl)
  const parts = { store, databaseUrl, clock: () => now, secret: 's'.repeat(40), logLevel: 'silent', pages: null } as const
  const { app, imports, fits } = await buildApp({ ...parts, https: https_ })
  onTestFinished(async () => {
    await imports.stop()
    await fits.close()
    await app.close()
  })
  const address = await app.listen({ port: 0, host: '127.0.0.1' })
  return new Promise((resolve, reject) => {
    https
      .get(`${address}/api/health`, { ca: https_.cert, servername: 'localhost' }, (answer) => {
        answer.resume()
        resolve({ status: answer.statusCode, headers: answer.headers })
      })
      .on('error', reject)
  })
}

it('a self-made certificate holds for the names of the machine, and the server answers over it', async () => {
  const folder = aFolder()
  const made = await selfMadeCertificate(folder, now, names)
  const certificate = new X509Certificate(made.cert)
  expect(certificate.subjectAltName).toContain('DNS:mill-server')
  expect(certificate.subjectAltName).toContain('IP Address:10.1.2.3')
  expect(statSync(path.join(folder, 'certificate-key.pem')).mode & 0o777).toBe(0o600)
  expect((await healthOver(made)).status).toBe(200)
})

it('it is kept, and made anew when the machine has another address or it is about to run out', async () => {
  const folder = aFolder()
  const first = await selfMadeCertificate(folder, now, names)
  expect(first.isNew).toBe(true)
  expect(await selfMadeCertificate(folder, now, names)).toMatchObject({ isNew: false, cert: first.cert })
  const moved = await selfMadeCertificate(folder, now, [...names, '10.1.2.4'])
  expect(moved.isNew).toBe(true)
  const later = new Date(now.getTime() + 396.5 * 86_400_000)
  expect((await selfMadeCertificate(folder, later, names)).isNew).toBe(true)
})

it('it is one that phones take: signed with SHA-256, an authority, for 397 days, with a name of ours', async () => {
  const certificate = new X509Certificate((await selfMadeCertificate(aFolder(), now, names)).cert)
  const sha256WithEcdsa = '06082a8648ce3d040302'
  expect(certificate.raw.toString('hex').split(sha256WithEcdsa)).toHaveLength(3)
  expect(certificate.ca).toBe(true)
  expect(certificate.subject).toBe('CN=Glandkeeper for trial on mill-server')
  expect(Date.parse(certificate.validTo) - Date.parse(certificate.validFrom)).toBe(397 * 86_400_000)
})

it('it is made anew when its key is gone or another, and never over a file that was not made here', async () => {
  const [folder, other] = [aFolder(), aFolder()]
  const key = path.join(folder, 'certificate-key.pem')
  await selfMadeCertificate(folder, now, names)
  await selfMadeCertificate(other, now, names)
  rmSync(key)
  expect((await selfMadeCertificate(folder, now, names)).isNew).toBe(true)
  copyFileSync(path.join(other, 'certificate-key.pem'), key)
  expect((await selfMadeCertificate(folder, now, names)).isNew).toBe(true)

  const file = path.join(folder, 'certificate.pem')
  writeFileSync(file, 'of the plant')
  await expect(selfMadeCertificate(folder, now, names)).rejects.toThrow(/was not made here/)
  expect(readFileSync(file, 'utf8')).toBe('of the plant')
})

it('its key is for the account of the server only, also where a file was there before or its mode was widened', async () => {
  const folder = aFolder()
  const key = path.join(folder, 'certificate-key.pem')
  const mode = () => statSync(key).mode & 0o777
  writeFileSync(key, 'left over', { mode: 0o644 })
  expect([(await selfMadeCertificate(folder, now, names)).isNew, mode()]).toEqual([true, 0o600])
  chmodSync(key, 0o644)
  expect([(await selfMadeCertificate(folder, now, names)).isNew, mode()]).toEqual([false, 0o600])
})

it('at the start it is said what was made, what to compare on the phone, and that the key stays', async () => {
  const made = await selfMadeCertificate(aFolder(), now, names)
  const said = selfMadeInWords(made).join('\n')
  for (const word of ['for trial', made.file, 'mill-server, 127.0.0.1, 10.1.2.3', new X509Certificate(made.cert).fingerprint256])
    expect(said).toContain(word)
  expect(said).toContain(`keep ${made.keyFile} here`)
})

it('the names are the machine as browsers ask for it and its own IPv4 addresses', () => {
  const address = { netmask: '', mac: '', cidr: null, internal: false }
  const interfaces = {
    lo: [{ ...address, address: '127.0.0.1', family: 'IPv4' as const, internal: true }],
    eth0: [
      { ...address, address: '10.1.2.3', family: 'IPv4' as const },
      { ...address, address: 'fd00::3', family: 'IPv6' as const, scopeid: 0 },
    ],
  }
  expect(namesOfThisMachine('Mühle', interfaces)).toEqual(['localhost', 'xn--mhle-0ra', '127.0.0.1', '10.1.2.3'])
  expect(namesOfThisMachine('no name', {})).toEqual(['localhost', '127.0.0.1'])
})

it('a given certificate is taken with its key', async () => {
  const folder = aFolder()
  const made = await selfMadeCertificate(folder, now, names)
  const [certFile, keyFile] = [path.join(folder, 'certificate.pem'), path.join(folder, 'certificate-key.pem')]
  const given = givenCertificate(certFile, keyFile, now)
  expect(given).toEqual({ cert: made.cert, key: made.key })
  expect((await healthOver(given)).status).toBe(200)
})

it('what is wrong with given files is said in words', async () => {
  const folder = aFolder()
  await selfMadeCertificate(folder, now, names)
  const other = aFolder()
  await selfMadeCertificate(other, now, names)
  const file = (of: string, name: string) => path.join(of, name)
  const cert = file(folder, 'certificate.pem')
  const key = file(folder, 'certificate-key.pem')
  const nonsense = file(folder, 'nonsense.pem')
  writeFileSync(nonsense, 'nonsense')
  const chain = file(folder, 'chain.pem')
  writeFileSync(chain, `${readFileSync(cert, 'utf8')}\n-----BEGIN CERTIFICATE-----\nzzz\n-----END CERTIFICATE-----\n`)
  expect(() => givenCertificate(chain, key, now)).toThrow(/cannot be used for https/)
  expect(() => givenCertificate(file(folder, 'none.pem'), key, now)).toThrow(/file of the certificate cannot be read/)
  expect(() => givenCertificate(nonsense, key, now)).toThrow(/holds no certificate/)
  expect(() => givenCertificate(cert, nonsense, now)).toThrow(/holds no private key/)
  expect(() => givenCertificate(cert, file(other, 'certificate-key.pem'), now)).toThrow(/is not the key of the certificate/)
  expect(() => givenCertificate(cert, key, new Date(now.getTime() + 398 * 86_400_000))).toThrow(/ran out on/)
})
