import { readFileSync } from 'node:fs'
import path from 'node:path'
import { readConfig } from './config.ts'
import { checkEvidence } from './features/evidence/check.ts'
import { prove, type Proved } from './features/evidence/prove.ts'
import { statesThatDiffer } from './features/glands/index.ts'
import { openReader, openStore, type Reader } from './platform/store.ts'

const MILLISECONDS_BETWEEN_LINES = 1_000

/** Proves the register, or the export of evidence that is named behind `--`. Reads only. */
async function main(): Promise<void> {
  const config = readConfig(process.env, path.resolve(import.meta.dirname, '../../..'))
  const file = process.argv[2]
  const faults = file === undefined ? await proveRegister(config.databaseUrl) : await proveFile(file, config.databaseUrl)
  process.exitCode = faults === 0 ? 0 : 1
}

/** Nothing in any chain of events altered, and every state the one its events make. @returns how many faults there are */
async function proveRegister(databaseUrl: string): Promise<number> {
  const reader = await openStore(databaseUrl)
  let faults = 0
  for (const { id, name } of await reader.read.site.findMany({ orderBy: { name: 'asc' } })) {
    const proved = await prove(reader, id, progressOf(name))
    console.log(`${name}: ${provedInWords(proved)}`)
    if (!proved.whole) faults += 1
    for await (const { tag, fields } of statesThatDiffer(reader.read, id, new Date())) {
      faults += 1
      console.log(`${name}: the kept state of ${tag} is not what its events make: ${fields.join(', ')}`)
    }
  }
  await reader.close()
  return faults
}

function provedInWords(proved: Proved): string {
  const { seals } = proved
  if (!proved.whole) {
    const event = proved.eventId === null ? '' : `, event ${proved.eventId}`
    return `chain broken at position ${proved.position}${event}: ${proved.what}`
  }
  const signed = seals === 0 ? '' : `, ${seals} signed ${seals === 1 ? 'head holds' : 'heads hold'}`
  return `${proved.events} events, chain whole, head ${proved.head || '(none)'}${signed}`
}

/** A line every second or so for a person who waits; nothing where the output goes into a file. */
function progressOf(site: string): (share: number) => void {
  let last = performance.now()
  return (share) => {
    if (!process.stderr.isTTY || performance.now() - last < MILLISECONDS_BETWEEN_LINES) return
    last = performance.now()
    console.error(`${site}: ${Math.floor(share * 100)} % of the chain walked`)
  }
}

/** By itself, and against the register where this machine has one. */
async function proveFile(file: string, databaseUrl: string): Promise<number> {
  const bytes = readFileSync(file)
  const reader = await readerIfThere(databaseUrl)
  const { checks, isGood } = await checkEvidence(reader, null, bytes)
  await reader?.close()
  for (const { what, isGood: holds, says } of checks) console.log(`${holds ? 'good ' : 'WRONG'}  ${what}: ${says}`)
  if (!reader) console.log('There is no register here: what it says was not compared.')
  return isGood ? 0 : 1
}

async function readerIfThere(databaseUrl: string): Promise<Reader | null> {
  try {
    const reader = await openReader(databaseUrl)
    await reader.read.site.count()
    return reader
  } catch {
    return null
  }
}

main().catch((error: unknown) => {
  console.error(`glandkeeper: ${error instanceof Error ? error.message : String(error)}`)
  process.exitCode = 1
})
