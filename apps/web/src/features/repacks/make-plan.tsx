import { Objective } from '@glandkeeper/contract/repack-plans'
import { format } from 'date-fns'
import { type SubmitEvent, useState } from 'react'
import { ChoiceInput, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { objectiveInWords } from './plan-words.ts'
import type { usePlanning } from './planning.tsx'
import { useSiteToday } from '../people/index.tsx'
import css from './repacks.module.css'

/** How far a plan may look ahead. */
const weeksChoices = [26, 52, 78, 104, 156].map((weeks) => ({ value: String(weeks), words: `${weeks} weeks` }))
const objectiveChoices = Objective.options.map((value) => ({ value, words: objectiveInWords[value] }))

interface MakePlanProps {
  planning: ReturnType<typeof usePlanning>
  onDone: () => void
}

/** A name, how far ahead, and what is to be least. */
export function MakePlan({ planning, onDone }: MakePlanProps) {
  const today = useSiteToday()
  const [name, setName] = useState(`Plan of ${format(today, 'd MMM yyyy')}`)
  const [weeks, setWeeks] = useState('52')
  const [objective, setObjective] = useState<Objective>('chance')
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    planning.ask({ name: name.trim(), weeks: Number(weeks), objective, whatIf: null, basedOn: null })
  }
  return (
    <form className={css.form} onSubmit={submit} aria-label="Make a plan" noValidate>
      <div className={css.fields}>
        <TextInput
          label="Name"
          maxLength={80}
          autoComplete="off"
          value={name}
          onChange={setName}
          fault={name.trim() === '' ? 'Is needed' : undefined}
        />
        <ChoiceInput label="Looks ahead" value={weeks} choices={weeksChoices} onChange={setWeeks} />
        <ChoiceInput
          label="What is to be least"
          hint="prices are in the settings"
          value={objective}
          choices={objectiveChoices}
          onChange={(value) => setObjective(Objective.parse(value))}
        />
      </div>
      <div className={page.acts}>
        <button type="submit" className="main" disabled={planning.isAsking || name.trim() === ''}>
          Make the plan
        </button>
        <button type="button" onClick={onDone}>
          Do not make one
        </button>
      </div>
    </form>
  )
}
