import { Person } from '@glandkeeper/contract/people'

const KEY = 'signed-in'

/** Who was last signed in on this device: without signal, or after a session has run out, work at the valves goes on as this person. */
export function keptPerson(): Person | null {
  try {
    return Person.safeParse(JSON.parse(localStorage.getItem(KEY) ?? 'null')).data ?? null
  } catch {
    return null
  }
}

export function keepPerson(person: Person): void {
  localStorage.setItem(KEY, JSON.stringify(person))
}

export function forgetPerson(): void {
  localStorage.removeItem(KEY)
}
