import { mkdirSync } from 'node:fs'
import path from 'node:path'
import { buildApp } from './app.ts'
import { readConfig } from './config.ts'
import { makeFirstSite } from './features/sites/first-site.ts'
import { systemClock } from './platform/clock.ts'
import { migratePostgresql, migrateSqlite } from './platform/migrations.ts'
import { secretIn } from './platform/secret.ts'
import { holdDataFolder } from './platform/single-server.ts'
import { openStore } from './platform/store.ts'

const say = (line: string) => console.log(`glandkeeper: ${line}`)
const projectFolder = path.resolve(import.meta.dirname, '../../..')

/** Starts the server: register up to date, first data in an empty one, then one port for API and pages. */
async function main(): Promise<void> {
  const config = readConfig(process.env, projectFolder)
  const isSqlite = config.databaseUrl.startsWith('file:')
  mkdirSync(config.dataFolder, { recursive: true })
  const release = isSqlite ? holdDataFolder(config.dataFolder) : () => {}
  const prismaFolder = path.join(projectFolder, 'prisma')
  const applied = isSqlite
    ? await migrateSqlite(config.databaseUrl.slice('file:'.length), prismaFolder, systemClock)
    : await migratePostgresql(config.databaseUrl, prismaFolder, systemClock)
  if (applied.length > 0) say(`register brought up to date: ${applied.join(', ')}`)

  const store = await openStore(config.databaseUrl)
  const signIns = await makeFirstSite(store, config, systemClock, say)
  const { app, imports } = await buildApp({
    store,
    clock: systemClock,
    secret: secretIn(config.dataFolder),
    logLevel: config.logLevel,
    pages: path.join(projectFolder, 'apps/web/dist'),
  })
  await imports.resume()

  const stop = async () => {
    await app.close()
    await imports.stop()
    await store.close()
    release()
  }
  process.once('SIGTERM', () => void stop().then(() => process.exit(0)))
  process.once('SIGINT', () => void stop().then(() => process.exit(0)))

  const address = await app.listen({ port: config.port, host: config.host })
  for (const { role, signInName, password } of signIns) say(`${role.padEnd(8)} sign in as ${signInName} with ${password}`)
  if (signIns.length > 0) say(`these are kept in ${path.relative(process.cwd(), path.join(config.dataFolder, 'sign-ins.txt'))}`)
  say(`ready at ${address}`)
}

main().catch((error: unknown) => {
  console.error(`glandkeeper: ${error instanceof Error ? error.message : String(error)}`)
  process.exitCode = 1
})
