import { existsSync, mkdirSync } from 'node:fs'
import path from 'node:path'
import { buildApp } from './app.ts'
import { type Config, readConfig } from './config.ts'
import { makeFirstSite, type SignIn } from './features/sites/first-site.ts'
import { type Certificate, givenCertificate, selfMadeCertificate, selfMadeInWords } from './platform/certificate.ts'
import { systemClock } from './platform/clock.ts'
import { migratePostgresql, migrateSqlite } from './platform/migrations.ts'
import { secretIn } from './platform/secret.ts'
import { holdRegister, oneStartAtATime } from './platform/single-server.ts'
import { openStore, type Store } from './platform/store.ts'

const say = (line: string) => console.log(`glandkeeper: ${line}`)
const projectFolder = path.resolve(import.meta.dirname, '../../..')
const pagesFolder = path.join(projectFolder, 'apps/web/dist')

/** Starts the server: register up to date, first data in an empty one, then one port for API and pages. */
async function main(): Promise<void> {
  const config = readConfig(process.env, projectFolder)
  mkdirSync(config.dataFolder, { recursive: true })
  const https = await certificateFor(config)
  const { store, signIns, release } = await openRegister(config)
  const { app, imports, fits, leakKeeping, leakStudies } = await buildApp({
    store,
    databaseUrl: config.databaseUrl,
    clock: systemClock,
    secret: secretIn(config.dataFolder),
    logLevel: config.logLevel,
    behindProxy: config.behindProxy,
    https,
    pages: existsSync(pagesFolder) ? pagesFolder : null,
  })
  await imports.resume()
  fits.watchNights()
  void leakKeeping.catchUp()
  leakStudies.watchNights()
  void leakStudies.catchUp()

  const stop = async () => {
    await app.close()
    await imports.stop()
    await fits.close()
    await store.close()
    release()
  }
  process.once('SIGTERM', () => void stop().then(() => process.exit(0)))
  process.once('SIGINT', () => void stop().then(() => process.exit(0)))

  const address = await app.listen({ port: config.port, host: config.host })
  for (const { role, signInName, password } of signIns) say(`${role.padEnd(8)} sign in as ${signInName} with ${password}`)
  if (signIns.length > 0) say(`these are kept in ${path.relative(process.cwd(), path.join(config.dataFolder, 'sign-ins.txt'))}`)
  if (isLoopback(config.host)) say("only this machine gets to it: HOST=0.0.0.0 opens it to the plant's network")
  say(`ready at ${address}`)
}

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host.startsWith('127.')
}

/** Before the register is opened: a wrong certificate must not cost a start. */
async function certificateFor({ https, dataFolder }: Config): Promise<Certificate | null> {
  if (https.is === 'off') return null
  if (https.is === 'given') return givenCertificate(https.cert, https.key, systemClock())
  const made = await selfMadeCertificate(dataFolder, systemClock())
  selfMadeInWords(made).forEach(say)
  return made
}

/** The register, up to date, with its first data, and held so that no second server writes to the same file. */
async function openRegister(config: Config): Promise<{ store: Store; signIns: SignIn[]; release: () => void }> {
  const { databaseUrl } = config
  const prismaFolder = path.join(projectFolder, 'prisma')
  const open = async (migrate: Promise<string[]>) => {
    const applied = await migrate
    if (applied.length > 0) say(`register brought up to date: ${applied.join(', ')}`)
    const store = await openStore(databaseUrl)
    return { store, signIns: await makeFirstSite(store, config, systemClock, say) }
  }
  if (!databaseUrl.startsWith('file:')) {
    const opened = await oneStartAtATime(databaseUrl, () => open(migratePostgresql(databaseUrl, prismaFolder, systemClock)))
    return { ...opened, release: () => {} }
  }
  const file = databaseUrl.slice('file:'.length)
  const release = holdRegister(file)
  return { ...(await open(migrateSqlite(file, prismaFolder, systemClock))), release }
}

main().catch((error: unknown) => {
  console.error(`glandkeeper: ${error instanceof Error ? error.message : String(error)}`)
  process.exitCode = 1
})
