import { Button, Input, Label, NumberField } from 'react-aria-components'
import css from './pad.module.css'

const look = css as Record<'stepper' | 'figure' | 'heard', string>

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

/** Less and more by a step, held down for many, or typed. A figure that cannot be is refused in words, not pulled inside. */
export function FigureStepper({ label, short, value, guess = null, step, least = 0, decimals = 1, onChange }: FigureStepperProps) {
  const shown = value ?? (guess === null ? Number.NaN : Number(guess.toFixed(decimals)))
  return (
    <NumberField
      className={look.stepper}
      value={shown}
      onChange={(next) => onChange(Number.isNaN(next) ? null : next)}
      step={step}
      minValue={least}
      commitBehavior="validate"
      formatOptions={{ minimumFractionDigits: decimals === 1 ? 1 : 0, maximumFractionDigits: decimals, useGrouping: false }}
      isWheelDisabled
    >
      <Button slot="decrement" aria-label={`${label}: less`}>
        −
      </Button>
      <div className={look.figure}>
        <Label>
          <span aria-hidden="true">{short}</span>
          <span className={look.heard}>{label}</span>
        </Label>
        <Input placeholder=" " data-guess={value === null} />
      </div>
      <Button slot="increment" aria-label={`${label}: more`}>
        +
      </Button>
    </NumberField>
  )
}
