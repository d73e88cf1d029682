import { readFileSync } from 'node:fs'
import path from 'node:path'
import { readConfig } from './config.ts'
import { checkEvidence } from './features/evidence/check.ts'
import { openReader, type Reader } from './platform/store.ts'
import { proveRegister } from './prove-register.ts'

const MILLISECONDS_BETWEEN_LINES = 1_000

/** Proves the register, or the export of evidence that is named behind `--`. Reads only. */
async function main(): Promise<void> {
  const config = readConfig(process.env, path.resolve(import.meta.dirname, '../../..'))
  const file = process.argv[2]
  const faults =
    file === undefined
      ? await proveRegister(config.databaseUrl, (line) => console.log(line), progressOf)
      : await proveFile(file, config.databaseUrl)
  process.exitCode = faults === 0 ? 0 : 1
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
