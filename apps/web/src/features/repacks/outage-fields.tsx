import type { Fault } from '@glandkeeper/contract/problem'
import { useQuery } from '@tanstack/react-query'
import { faultBeside } from '../../ui/fault-beside.ts'
import { TextInput } from '../../ui/field.tsx'
import { siteAreas } from '../register/queries.ts'
import { type OutageDraft, type OutageText, placeOfField } from './outage-draft.ts'
import css from './repacks.module.css'

interface OutageFieldsProps {
  draft: OutageDraft
  onChange: (draft: OutageDraft) => void
  faults: readonly Fault[]
}

/** Name, days, hours and areas of an outage that is, or of one that is asked about. */
export function OutageFields({ draft, onChange, faults }: OutageFieldsProps) {
  const field = (name: OutageText) => ({
    value: draft[name],
    onChange: (value: string) => onChange({ ...draft, [name]: value }),
    // What may be empty is not at fault for the likely day that is missing.
    fault: isOptional(name) && draft[name] === '' ? undefined : faultBeside(placeOfField[name], draft[name], faults),
  })
  const figure = { isFigure: true, inputMode: 'decimal' } as const
  return (
    <>
      <div className={css.fields}>
        <TextInput label="Name" hint="summer stop" maxLength={80} autoComplete="off" {...field('name')} />
        <TextInput label="First day, likely" type="date" {...field('likelyOn')} />
        <TextInput label="First day, at the earliest" type="date" hint="empty: settled" {...field('earliestOn')} />
        <TextInput label="First day, at the latest" type="date" hint="empty: settled" {...field('latestOn')} />
        <TextInput label="Days" hint="usual 1 to 60" isFigure inputMode="numeric" {...field('days')} />
      </div>
      <div className={css.fields} role="group" aria-label="Hours for repacks">
        <TextInput label="Hours of fitting" hint="for repacks alone, all people together" {...figure} {...field('fitting')} />
        <TextInput label="Hours of scaffolding" {...figure} {...field('scaffolding')} />
        <TextInput label="Hours of isolating" {...figure} {...field('isolating')} />
      </div>
      <Areas chosen={draft.areaCodes} onChange={(areaCodes) => onChange({ ...draft, areaCodes })} />
    </>
  )
}

const isOptional = (name: OutageText) => name === 'earliestOn' || name === 'latestOn'

function Areas({ chosen, onChange }: { chosen: readonly string[]; onChange: (codes: readonly string[]) => void }) {
  const areas = useQuery(siteAreas)
  const toggle = (code: string) => onChange(chosen.includes(code) ? chosen.filter((one) => one !== code) : [...chosen, code])
  return (
    <fieldset className={css.areas}>
      <legend>Areas that are down; none ticked: the whole site</legend>
      {areas.data?.areas.map(({ code, name }) => (
        <label key={code}>
          <input type="checkbox" checked={chosen.includes(code)} onChange={() => toggle(code)} />
          {code} {name}
        </label>
      ))}
    </fieldset>
  )
}
