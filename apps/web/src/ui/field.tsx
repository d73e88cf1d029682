import type { QuantityMeta } from '@glandkeeper/contract/quantity'
import { useId } from 'react'
import {
  Button,
  FieldError,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select,
  SelectValue,
  Switch,
  Text,
  TextField,
  type TextFieldProps,
} from 'react-aria-components'
import { formatCount } from './count.ts'
import css from './field.module.css'

const look = css as Record<
  'field' | 'figure' | 'hint' | 'fault' | 'input' | 'choice' | 'list' | 'item' | 'switch' | 'track',
  string
>

interface FieldProps {
  label: string
  hint?: string | undefined
  fault?: string | undefined
}

interface TextInputProps
  extends FieldProps, Pick<TextFieldProps, 'type' | 'autoComplete' | 'inputMode' | 'isRequired' | 'maxLength'> {
  value: string
  onChange: (value: string) => void
  isFigure?: boolean
  /** Offered while typing; anything else may be typed too. */
  suggestions?: readonly string[]
}

export function TextInput({ label, hint, fault, isFigure = false, suggestions, ...field }: TextInputProps) {
  const suggestionsId = useId()
  return (
    <TextField
      {...field}
      isInvalid={fault !== undefined}
      validationBehavior="aria"
      className={isFigure ? `${look.field} ${look.figure}` : look.field}
    >
      <Label>{label}</Label>
      <Input className={look.input} {...(suggestions && { list: suggestionsId })} />
      {suggestions && (
        <datalist id={suggestionsId}>
          {suggestions.map((suggestion) => (
            <option key={suggestion}>{suggestion}</option>
          ))}
        </datalist>
      )}
      <Below hint={hint} fault={fault} />
    </TextField>
  )
}

interface NumberInputProps extends Omit<TextInputProps, 'label' | 'hint' | 'inputMode' | 'isFigure' | 'suggestions'> {
  quantity: QuantityMeta
  label?: string
}

/** Text until it is saved: a figure outside its range is said so in words and never quietly pulled inside. */
export function NumberInput({ quantity, label = quantity.label, ...field }: NumberInputProps) {
  const inputMode = quantity.min < 0 ? 'text' : quantity.step < 1 ? 'decimal' : 'numeric'
  return (
    <TextInput
      {...field}
      isFigure
      label={quantity.unit === '' ? label : `${label}, ${quantity.unit}`}
      hint={rangeInWords(quantity)}
      inputMode={inputMode}
    />
  )
}

function rangeInWords({ min, max, usual }: QuantityMeta): string {
  return usual ? `usual ${formatCount(usual[0])} to ${formatCount(usual[1])}` : `${formatCount(min)} to ${formatCount(max)}`
}

interface Choice {
  value: string
  words: string
}

interface ChoiceInputProps extends FieldProps {
  value: string | null
  choices: readonly Choice[]
  onChange: (value: string) => void
  placeholder?: string
  isRequired?: boolean
  /** For choices inside a table, where the column and row headings already show what it is. */
  isLabelHidden?: boolean
}

export function ChoiceInput({
  label,
  hint,
  fault,
  value,
  choices,
  onChange,
  placeholder = 'choose',
  isRequired = false,
  isLabelHidden = false,
}: ChoiceInputProps) {
  return (
    <Select
      className={look.field}
      value={value}
      onChange={(key) => key !== null && onChange(String(key))}
      placeholder={placeholder}
      isRequired={isRequired}
      isInvalid={fault !== undefined}
      validationBehavior="aria"
      {...(isLabelHidden && { 'aria-label': label })}
    >
      {!isLabelHidden && <Label>{label}</Label>}
      <Button className={look.choice}>
        <SelectValue />
        <svg width="10" height="6" aria-hidden="true">
          <path d="M1 1L5 5L9 1" className="out" />
        </svg>
      </Button>
      <Below hint={hint} fault={fault} />
      <Popover className={look.list} offset={2}>
        <ListBox>
          {choices.map((choice) => (
            <ListBoxItem key={choice.value} id={choice.value} textValue={choice.words} className={look.item}>
              {choice.words}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  )
}

function Below({ hint, fault }: Pick<FieldProps, 'hint' | 'fault'>) {
  return (
    <>
      {hint !== undefined && (
        <Text slot="description" className={look.hint}>
          {hint}
        </Text>
      )}
      <FieldError className={look.fault}>{fault}</FieldError>
    </>
  )
}

interface SwitchInputProps {
  label: string
  isOn: boolean
  onChange: (isOn: boolean) => void
}

export function SwitchInput({ label, isOn, onChange }: SwitchInputProps) {
  return (
    <Switch className={look.switch} isSelected={isOn} onChange={onChange}>
      <span className={look.track} aria-hidden="true" />
      {label}: {isOn ? 'yes' : 'no'}
    </Switch>
  )
}

/** Choices whose words are their values. */
export function choicesOf(values: readonly string[]): Choice[] {
  return values.map((value) => ({ value, words: value }))
}
