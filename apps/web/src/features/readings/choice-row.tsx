import { useId } from 'react'
import look from './pad.module.css'

interface ChoiceRowProps<T extends string> {
  label: string
  choices: readonly T[]
  value: T | null
  onChange: (value: T) => void
}

/** One of a few words, each a target for a thumb. */
export function ChoiceRow<T extends string>({ label, choices, value, onChange }: ChoiceRowProps<T>) {
  const name = useId()
  return (
    <fieldset className={look.choices}>
      <legend>{label}</legend>
      <div className={look.options}>
        {choices.map((choice) => (
          <label key={choice} className={look.option}>
            <input type="radio" name={name} checked={choice === value} onChange={() => onChange(choice)} />
            {choice}
          </label>
        ))}
      </div>
    </fieldset>
  )
}
