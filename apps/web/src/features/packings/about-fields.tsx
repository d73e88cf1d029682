import { FamilyForm } from '@glandkeeper/contract/family-form'
import { Caution } from '@glandkeeper/contract/packings'
import { ChoiceInput, choicesOf, SwitchInput, TextInput } from '../../ui/field.tsx'
import type { AboutDraft } from './family-draft.ts'
import css from './packings.module.css'

interface AboutFieldsProps {
  draft: AboutDraft
  onChange: (draft: AboutDraft) => void
  fault?: string | undefined
}

/** What a family of the site's own is, besides its figures. */
export function AboutFields({ draft, onChange, fault }: AboutFieldsProps) {
  const withCaution = (caution: Caution, isOn: boolean) =>
    onChange({ ...draft, cautions: Caution.options.filter((one) => (one === caution ? isOn : draft.cautions.includes(one))) })
  return (
    <>
      <div className={css.fields}>
        <ChoiceInput
          label="Form"
          hint="cord cut to rings, or rings pressed to size"
          value={draft.form}
          choices={choicesOf(FamilyForm.options)}
          onChange={(form) => onChange({ ...draft, form: FamilyForm.parse(form) })}
        />
        <TextInput
          label="Description"
          hint="what it is made of, and where its sheet lies"
          maxLength={200}
          value={draft.description}
          onChange={(description) => onChange({ ...draft, description })}
          fault={fault}
        />
      </div>
      <fieldset className={css.switches}>
        <legend>Cautions</legend>
        {Caution.options.map((caution) => (
          <SwitchInput
            key={caution}
            label={caution}
            isOn={draft.cautions.includes(caution)}
            onChange={(isOn) => withCaution(caution, isOn)}
          />
        ))}
      </fieldset>
    </>
  )
}
