import { type KeyboardEvent, useId, useState } from 'react'
import { figureAsTyped, figureOf, stepped } from './figure.ts'
import look from './pad.module.css'
import { useHold } from './use-hold.ts'

/** More digits than this are set smaller. */
const LONG = 4

interface FigureStepperProps {
  /** In full, for those who hear it; `short` is what is seen. */
  label: string
  short: string
  value: number | null
  /** Worked out, shown with dashes until somebody sets it. */
  guess?: number | null
  step: number
  least?: number
  decimals?: number
  onChange: (value: number | null) => void
}

/** Less and more by a step, held down for many, or typed on keys for figures; below 0 goes by steps where they have no minus. A figure that cannot be is refused in words, not pulled inside. */
export function FigureStepper({
  label,
  short,
  value,
  guess = null,
  step,
  least = 0,
  decimals = 1,
  onChange,
}: FigureStepperProps) {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const shown = typed ?? figureAsTyped(value ?? guess, decimals)
  const by = (change: number) => {
    setTyped(null)
    onChange(stepped(figureOf(shown), change, least))
  }
  const less = useHold(() => by(-step))
  const more = useHold(() => by(step))
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return
    event.preventDefault()
    by(event.key === 'ArrowUp' ? step : -step)
  }
  return (
    <div className={look.stepper}>
      <button type="button" {...less} aria-label={`${label}: less`}>
        −
      </button>
      <div className={look.figure}>
        <label htmlFor={id}>
          <span aria-hidden="true">{short}</span>
          <span className={look.heard}>{label}</span>
        </label>
        <input
          id={id}
          inputMode={decimals === 0 ? 'numeric' : 'decimal'}
          autoComplete="off"
          placeholder=" "
          data-guess={value === null}
          data-long={shown.length > LONG}
          aria-invalid={Number.isNaN(value)}
          value={shown}
          onChange={({ target }) => {
            setTyped(target.value)
            onChange(figureOf(target.value))
          }}
          onFocus={({ target }) => target.select()}
          onBlur={() => setTyped((text) => (text !== null && Number.isNaN(figureOf(text)) ? text : null))}
          onKeyDown={onKeyDown}
        />
      </div>
      <button type="button" {...more} aria-label={`${label}: more`}>
        +
      </button>
    </div>
  )
}
