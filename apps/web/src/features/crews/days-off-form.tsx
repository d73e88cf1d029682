import { type AreaWalk, type Crew, DaysOffInput } from '@glandkeeper/contract/crews'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { useState, type SubmitEvent } from 'react'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { ChoiceInput, choicesOf, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './crews.module.css'
import { daysOffOfDraft, emptyDaysOff, hasShare, percentRange, whoseChoices } from './days-off-draft.ts'
import { useAddDaysOff } from './queries.ts'
import { waysBack } from './repeats.ts'

interface DaysOffFormProps {
  crews: readonly Crew[]
  areas: readonly AreaWalk[]
  onDone: () => void
}

export function DaysOffForm({ crews, areas, onDone }: DaysOffFormProps) {
  const [draft, setDraft] = useState(emptyDaysOff)
  const [found, setFound] = useState<readonly Fault[]>([])
  const add = useAddDaysOff()
  const told = faultsTold(add.error, found)
  const field = (name: 'reason' | 'startsOn' | 'endsOn') => ({
    value: draft[name],
    onChange: (value: string) => setDraft({ ...draft, [name]: value }),
    fault: faultBeside(name, draft[name], told),
  })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    add.reset()
    const body = daysOffOfDraft(draft)
    const checked = DaysOffInput.safeParse(body)
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) add.mutate(body, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label="Add days off">
      <div className={css.fields}>
        <ChoiceInput
          label="Whose"
          value={draft.whose}
          choices={whoseChoices(crews, areas)}
          onChange={(whose) => setDraft({ ...draft, whose })}
          fault={faultBeside('crewId', draft.whose, told) ?? faultBeside('areaCode', draft.whose, told)}
        />
        <TextInput label="Reason" hint="summer stop" maxLength={80} autoComplete="off" {...field('reason')} />
        <TextInput label="First day" type="date" {...field('startsOn')} />
        <TextInput label="Last day" type="date" hint="the first again for a single day" {...field('endsOn')} />
        <ChoiceInput
          label="Comes back"
          hint="counted from the first day; a month without that date is passed over"
          value={draft.comesBack}
          choices={choicesOf(waysBack)}
          onChange={(comesBack) => setDraft({ ...draft, comesBack })}
          fault={faultBeside('repeats', draft.comesBack, told)}
        />
        {hasShare(draft) && (
          <TextInput
            label="Share of the hours lost, %"
            hint="100 is usual: nobody walks"
            isFigure
            inputMode="decimal"
            value={draft.percent}
            onChange={(percent) => setDraft({ ...draft, percent })}
            // The contract counts from 0 to 1, which is not what is typed here.
            fault={faultBeside('share', draft.percent, told) && percentRange()}
          />
        )}
      </div>
      {add.error && <ProblemNote error={add.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={add.isPending}>
          Add the days off
        </button>
        <button type="button" onClick={onDone}>
          Do not add any
        </button>
      </div>
    </form>
  )
}
