import { ChangeSubject } from '@glandkeeper/contract/log'
import { Link, useNavigate } from 'react-router'
import { ChoiceInput, choicesOf, TextInput } from '../../ui/field.tsx'
import { daysAreTurned, isFiltered, type LogView, withLogView } from './log-address.ts'
import css from './log.module.css'
import { useTyped } from '../../ui/typed.ts'

const ANYTHING = 'anything'
const ANYBODY = 'anybody'
const subjects = choicesOf([ANYTHING, ...ChangeSubject.options])

interface FiltersProps {
  view: LogView
  people: readonly { readonly personId: string; readonly name: string }[]
}

/** What about, who, when, and words that stand in it. */
export function Filters({ view, people }: FiltersProps) {
  const go = useNavigate()
  const [typed, setTyped] = useTyped({ from: view.from, to: view.to, find: view.find }, (fields) => {
    void go(withLogView(view, fields), { replace: true, preventScrollReset: true })
  })
  const choose = (change: Partial<LogView>) => void go(withLogView(view, change), { preventScrollReset: true })
  const anybody = { value: ANYBODY, words: ANYBODY }
  return (
    <search className={css.filters} aria-label="Changes to show">
      <ChoiceInput
        label="What about"
        value={view.subject ?? ANYTHING}
        choices={subjects}
        onChange={(subject) => choose({ subject: ChangeSubject.safeParse(subject).data ?? null })}
      />
      <ChoiceInput
        label="Who"
        value={view.person ?? ANYBODY}
        placeholder="somebody not known here"
        choices={[anybody, ...people.map(({ personId, name }) => ({ value: personId, words: name }))]}
        onChange={(person) => choose({ person: person === ANYBODY ? null : person })}
      />
      <TextInput label="From" type="date" value={typed.from} onChange={(from) => setTyped({ from })} />
      <TextInput
        label="To"
        type="date"
        value={typed.to}
        onChange={(to) => setTyped({ to })}
        fault={daysAreTurned(typed) ? 'Comes before the first day' : undefined}
      />
      <div className={css.words}>
        <TextInput
          label="Words in it"
          type="search"
          maxLength={60}
          autoComplete="off"
          value={typed.find}
          onChange={(find) => setTyped({ find })}
        />
      </div>
      {isFiltered(view) && (
        <Link to="?" className={css.all}>
          Show all changes
        </Link>
      )}
    </search>
  )
}
