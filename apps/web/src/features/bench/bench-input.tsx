import { studThreads } from '@glandkeeper/engines/threads/stud-threads'
import { ChoiceInput, choicesOf, SwitchInput, TextInput } from '../../ui/field.tsx'
import { type BenchField, labelOf } from './fields.ts'

interface BenchInputProps {
  field: BenchField
  text: string
  fault: string | undefined
  /** How a figure in another unit was read. */
  readAs: string | undefined
  note: string | undefined
  onChange: (text: string) => void
}

export function BenchInput({ field, text, fault, readAs, note, onChange }: BenchInputProps) {
  const label = labelOf(field)
  switch (field.kind) {
    case 'figure':
    case 'figures': {
      const unit = field.meta.unit
      return (
        <TextInput
          isFigure
          label={unit === '' || unit === 'ratio' ? label : `${label}, ${unit}`}
          value={text}
          fault={fault}
          hint={hintOf([
            readAs && `= ${readAs}`,
            field.kind === 'figures' && 'several, apart by semicolons',
            note,
            field.isOptional && 'may stay empty',
          ])}
          onChange={onChange}
          autoComplete="off"
        />
      )
    }
    case 'choice':
      return (
        <ChoiceInput
          label={label}
          value={text === '' ? null : text}
          choices={choicesOf(field.words)}
          fault={fault}
          hint={note}
          onChange={onChange}
        />
      )
    case 'yes or no':
      return <SwitchInput label={label} isOn={text === 'yes'} onChange={(isOn) => onChange(isOn ? 'yes' : 'no')} />
    case 'text':
      return (
        <TextInput
          label={label}
          value={text}
          fault={fault}
          hint={hintOf([note, field.isOptional && 'may stay empty'])}
          onChange={onChange}
          autoComplete="off"
          {...(field.name === 'studThread' && { suggestions: studThreads.map((thread) => thread.designation) })}
        />
      )
  }
}

function hintOf(parts: readonly (string | false | undefined)[]): string | undefined {
  const said = parts.filter((part) => typeof part === 'string' && part !== '')
  return said.length === 0 ? undefined : said.join(' · ')
}
