import { AgeBand } from '@glandkeeper/contract/leaks'
import { ValveTag } from '@glandkeeper/contract/valves'
import { useQuery } from '@tanstack/react-query'
import { type SubmitEvent, useState } from 'react'
import { useNavigate } from 'react-router'
import { ChoiceInput, TextInput } from '../../ui/field.tsx'
import { useIsNarrow } from '../../ui/narrow.ts'
import { siteFamilies } from '../packings/queries.ts'
import { useSiteToday } from '../people/index.tsx'
import { siteAreas } from '../register/queries.ts'
import { type LeakFilter, type LeakView, withLeaks } from './leak-address.ts'
import { shortMonth, stateWords } from './leak-words.ts'
import css from './leaks.module.css'
import { monthsBack } from './months-back.ts'

interface FiltersProps {
  view: LeakView
  services: readonly { readonly service: string }[]
}

/** Which leaks to show; on a phone folded away, so that the leaks stand near the top. */
export function LeakFiltersForm(props: FiltersProps) {
  const set = Object.keys(props.view.filters).length
  if (!useIsNarrow()) return <Fields {...props} />
  return (
    <details className={css.folded}>
      <summary>Which leaks to show{set > 0 && `, ${set} set`}</summary>
      <Fields {...props} />
    </details>
  )
}

const ANY = 'all'
const NOT_KNOWN = 'not known'
const states = Object.entries(stateWords).map(([value, words]) => ({ value, words }))
const ages = AgeBand.options.map((value) => ({ value, words: value }))

function Fields({ view, services }: FiltersProps) {
  const areas = useQuery(siteAreas).data?.areas ?? []
  const families = useQuery(siteFamilies).data?.families ?? []
  const today = useSiteToday()
  const named = (values: readonly string[]) => values.map((value) => ({ value, words: value }))
  const months = monthsBack(today, view.filters.month).map((month) => ({ value: month, words: shortMonth(month) }))
  return (
    <search className={css.filters} aria-label="Leaks to show">
      <Choice {...{ view }} name="state" label="State" choices={states} />
      <Choice {...{ view }} name="area" label="Area" choices={areas.map(({ code, name }) => ({ value: code, words: name }))} />
      <Choice {...{ view }} name="service" label="Service" choices={named(services.map(({ service }) => service))} />
      <Choice {...{ view }} name="family" label="Packing" choices={named([...families.map(({ name }) => name), NOT_KNOWN])} />
      <Choice {...{ view }} name="age" label="Age of the packing" choices={ages} />
      <Choice {...{ view }} name="month" label="First seen in" choices={months} />
      <ValveField key={view.filters.tag} view={view} />
    </search>
  )
}

interface ChoiceProps {
  view: LeakView
  name: LeakFilter
  label: string
  choices: readonly { readonly value: string; readonly words: string }[]
}

/** What is set and no longer among the choices, as a packing given up, stays chosen. */
function Choice({ view, name, label, choices }: ChoiceProps) {
  const go = useNavigate()
  const value = view.filters[name] ?? ANY
  const isListed = value === ANY || choices.some((choice) => choice.value === value)
  return (
    <ChoiceInput
      label={label}
      value={value}
      choices={[{ value: ANY, words: ANY }, ...(isListed ? [] : [{ value, words: value }]), ...choices]}
      onChange={(chosen) => void go(withLeaks(view, { [name]: chosen === ANY ? null : chosen }), { preventScrollReset: true })}
    />
  )
}

function ValveField({ view }: { view: LeakView }) {
  const go = useNavigate()
  const [typed, setTyped] = useState(view.filters.tag ?? '')
  const [fault, setFault] = useState<string>()
  const find = (event: SubmitEvent) => {
    event.preventDefault()
    const tag = typed.trim() === '' ? null : (ValveTag.safeParse(typed).data ?? undefined)
    setFault(tag === undefined ? 'Is no tag: letters, digits and . _ / + - only' : undefined)
    if (tag !== undefined) void go(withLeaks(view, { tag }), { preventScrollReset: true })
  }
  return (
    <form onSubmit={find} noValidate className={css.valve}>
      <TextInput
        label="Whole tag"
        type="search"
        maxLength={40}
        autoComplete="off"
        value={typed}
        onChange={setTyped}
        fault={fault}
      />
      <button type="submit">Find</button>
    </form>
  )
}
