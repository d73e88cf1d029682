import type { OutboxEntry } from '../../platform/outbox/entries.ts'

/** Entries that were not sent, as a file: the same JSON the server takes, each with its words and its refusal. */
export function unsentFile(entries: readonly OutboxEntry[]): string {
  const lines = entries.map(({ tag, says, state, problem, event }) => ({ tag, says, state, problem, event }))
  return `${JSON.stringify({ unsent: lines }, null, 1)}\n`
}

export function downloadUnsent(entries: readonly OutboxEntry[]): void {
  handOver(new Blob([unsentFile(entries)], { type: 'application/json' }), 'unsent-entries.json')
}

/** Hands a file to the browser. */
export function handOver(content: Blob, name: string): void {
  const address = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
