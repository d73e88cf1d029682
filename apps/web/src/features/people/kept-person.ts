import { Person } from '@glandkeeper/contract/people'
import { keep, kept } from '../../platform/kept.ts'

const KEY = 'signed-in'

/** Who was last signed in on this device: without signal, or after a session has run out, work at the valves goes on as this person. */
export const keptPerson = () => kept(KEY, Person)

/** Null when somebody signs out. */
export const keepPerson = (person: Person | null) => keep(KEY, person)
