import type { OutboxEntry } from '../../platform/outbox/entries.ts'

/** Entries that were not sent, as a file: the same JSON the server takes, each with its words and its refusal. */
export function unsentFile(entries: readonly OutboxEntry[]): string {
  const lines = entries.map(({ tag, says, state, problem, event }) => ({ tag, says, state, problem, event }))
  return `${JSON.stringify({ unsent: lines }, null, 1)}\n`
}

/** Hands the file to the browser. */
export function downloadUnsent(entries: readonly OutboxEntry[]): void {
  const address = URL.createObjectURL(new Blob([unsentFile(entries)], { type: 'application/json' }))
  const link = document.createElement('a')
  link.href = address
  link.download = 'unsent-entries.json'
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
