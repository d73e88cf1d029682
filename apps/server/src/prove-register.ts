import { prove, type Proved } from './features/evidence/prove.ts'
import { statesThatDiffer } from './features/glands/index.ts'
import { openStore } from './platform/store.ts'

type ProgressOf = (site: string) => (share: number) => void

/** Nothing in any chain of events altered, and every state the one its events make. @returns how many faults there are */
export async function proveRegister(
  databaseUrl: string,
  say: (line: string) => void,
  progressOf: ProgressOf = () => () => {},
): Promise<number> {
  const reader = await openStore(databaseUrl)
  let faults = 0
  for (const { id, name } of await reader.read.site.findMany({ orderBy: { name: 'asc' } })) {
    const proved = await prove(reader, id, progressOf(name))
    say(`${name}: ${provedInWords(proved)}`)
    if (!proved.whole) faults += 1
    for await (const { tag, fields } of statesThatDiffer(reader.read, id, new Date())) {
      faults += 1
      say(`${name}: the kept state of ${tag} is not what its events make: ${fields.join(', ')}`)
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
