import type { KeyboardEvent } from 'react'

/** How a key goes through the rows; undefined for every other key. */
const steps: Readonly<Record<string, number>> = { Enter: 1, ArrowDown: 1, ArrowUp: -1 }

/**
 * Enter and down go to the same column of the next row that can be typed in, up to the one before; after the last row
 * comes the button that saves. Tab goes through the cells by itself; Enter with Ctrl saves from anywhere.
 */
export function goThroughRows(event: KeyboardEvent<HTMLElement>): void {
  const cell = event.currentTarget
  const step = steps[event.key]
  const column = cell.dataset['at']?.split(':').at(1)
  // With Alt a list of words opens, as everywhere in the browser.
  if (step === undefined || column === undefined || event.altKey || event.nativeEvent.isComposing) return
  const form = cell.closest('form')
  if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
    event.preventDefault()
    form?.requestSubmit()
    return
  }
  // The button of a row that has an entry already is pressed with Enter.
  if (event.key === 'Enter' && cell instanceof HTMLButtonElement) return
  event.preventDefault()
  const rows = [...(form?.querySelectorAll<HTMLElement>(`[data-at$=":${column}"]`) ?? [])]
  const next = rows[rows.indexOf(cell) + step]
  if (next) next.focus()
  else if (step > 0) form?.querySelector<HTMLElement>('button[type=submit]')?.focus()
}
