import type { Area } from '@glandkeeper/contract/areas'
import { ChoiceInput, choicesOf, NumberInput, SwitchInput, TextInput } from '../../ui/field.tsx'
import { NOT_KNOWN } from './valve-draft.ts'
import type { ValveField } from './valve-fields.ts'

interface FormFieldProps {
  field: ValveField
  value: string | boolean
  fault: string | undefined
  areas: readonly Area[]
  onChange: (value: string | boolean) => void
}

export function FormField({ field, value, fault, areas, onChange }: FormFieldProps) {
  const { input, label, hint, mayBeUnknown } = field
  const typed = typeof value === 'string' ? value : ''
  const shared = { label, hint, fault, onChange }
  if (field.pointer === '/areaCode') {
    const choices = areas.map(({ code, name }) => ({ value: code, words: `${code} ${name}` }))
    return <ChoiceInput {...shared} isRequired value={typed === '' ? null : typed} choices={choices} />
  }
  switch (input.kind) {
    case 'yes or no':
      return <SwitchInput label={label} isOn={value === true} onChange={onChange} />
    case 'figure':
      return <NumberInput quantity={input.quantity} value={typed} fault={fault} onChange={onChange} isRequired={!mayBeUnknown} />
    case 'word': {
      const words = mayBeUnknown ? [NOT_KNOWN, ...input.words] : input.words
      return <ChoiceInput {...shared} isRequired={!mayBeUnknown} value={typed === '' ? null : typed} choices={choicesOf(words)} />
    }
    case 'text':
      return (
        <TextInput
          {...shared}
          value={typed}
          isRequired={needed.has(field.pointer)}
          {...(input.longest !== undefined && { maxLength: input.longest })}
        />
      )
  }
}

/** Texts that may not be empty. */
const needed = new Set(['/tag', '/service'])
