import type { ImportKind, ImportStep } from '@glandkeeper/contract/imports'

export const kindInWords: Readonly<Record<ImportKind, string>> = { valves: 'valve list', history: 'history' }

export const stepInWords: Readonly<Record<ImportStep, string>> = {
  checking: 'being checked',
  checked: 'checked, not yet imported',
  writing: 'being written',
  done: 'imported',
  unreadable: 'not readable',
  cancelled: 'cancelled',
  failed: 'failed',
}
