import type { KeyboardEvent } from 'react'
import { goThroughRows } from './grid-keys.ts'
import { type Cell, cellNames, choicesOf } from './row-texts.ts'
import look from './round-entry.module.css'

interface CellInputProps {
  cell: Cell
  /** Place in the grid, as `3:gapLeft`. */
  at: string
  unit: string
  text: string
  faultId: string | undefined
  onType: (text: string) => void
}

/** One cell: a figure or words to type, or one of a few words to choose by letter or arrow. */
export function CellInput({ cell, at, unit, text, faultId, onType }: CellInputProps) {
  const choices = choicesOf[cell]
  const shared = {
    'data-at': at,
    'aria-invalid': faultId !== undefined,
    'aria-describedby': faultId,
    value: text,
  }
  return (
    <label className={`${look.cell} ${look[cell] ?? ''}`}>
      <span className={look.name}>{unit === '' ? cellNames[cell] : `${cellNames[cell]}, ${unit}`}</span>
      {choices ? (
        <select
          {...shared}
          onChange={({ target }) => onType(target.value)}
          onKeyDown={(event) => {
            choose(event, choices, onType)
            goThroughRows(event)
          }}
        >
          <option value="">–</option>
          {choices.map((choice) => (
            <option key={choice}>{choice}</option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          enterKeyHint="next"
          inputMode={cell === 'gapLeft' || cell === 'gapRight' ? 'decimal' : 'text'}
          maxLength={cell === 'note' ? 480 : 12}
          onChange={({ target }) => onType(target.value)}
          onKeyDown={goThroughRows}
          onFocus={({ target }) => target.select()}
        />
      )}
    </label>
  )
}

/** Left and right go through the words, since up and down go through the rows; letters are the browser's own. */
function choose(event: KeyboardEvent<HTMLSelectElement>, choices: readonly string[], onType: (text: string) => void): void {
  if (event.altKey || event.ctrlKey || event.metaKey) return
  const here = choices.indexOf(event.currentTarget.value)
  const next = { ArrowRight: here + 1, ArrowLeft: here - 1, Delete: -1, Backspace: -1 }[event.key]
  if (next === undefined) return
  event.preventDefault()
  onType(choices[Math.min(next, choices.length - 1)] ?? '')
}
