import path from 'node:path'
import { readConfig } from './config.ts'
import { statesThatDiffer } from './features/glands/index.ts'
import { chainOf } from './features/events/chain-of.ts'
import { verifyChain } from './platform/chain.ts'
import { openStore } from './platform/store.ts'

/** Proves the register: nothing in the chain of events altered, and every state the one its events make. */
async function main(): Promise<void> {
  const config = readConfig(process.env, path.resolve(import.meta.dirname, '../../..'))
  const store = await openStore(config.databaseUrl)
  let faults = 0
  for (const site of await store.read.site.findMany({ orderBy: { name: 'asc' } })) {
    const verdict = await verifyChain(chainOf(store.read, site.id, site.chainLength), site)
    if (verdict.whole) console.log(`${site.name}: ${verdict.events} events, chain whole, head ${verdict.head || '(none)'}`)
    else {
      faults += 1
      console.log(
        `${site.name}: chain broken at position ${verdict.position}${verdict.eventId === null ? '' : `, event ${verdict.eventId}`}: ${verdict.what}`,
      )
    }
    for await (const { tag, fields } of statesThatDiffer(store.read, site.id, new Date())) {
      faults += 1
      console.log(`${site.name}: the kept state of ${tag} is not what its events make: ${fields.join(', ')}`)
    }
  }
  await store.close()
  process.exitCode = faults === 0 ? 0 : 1
}

main().catch((error: unknown) => {
  console.error(`glandkeeper: ${error instanceof Error ? error.message : String(error)}`)
  process.exitCode = 1
})
