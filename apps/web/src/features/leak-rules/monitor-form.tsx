import { type LeakRule, MonitoringKind } from '@glandkeeper/contract/leak-rules'
import { format } from 'date-fns'
import { type SubmitEvent, useId, useState } from 'react'
import { counted } from '../../ui/count.ts'
import { ChoiceInput, choicesOf, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useSiteToday } from '../people/index.tsx'
import css from './leak-rules.module.css'
import { useMonitorValves } from './queries.ts'
import { MOST_TAGS, tagsIn } from './typed-tags.ts'

const whyOf = {
  ordinary: 'Note, if there is one',
  difficult: 'Why it is difficult to reach, and the plan for it',
  unsafe: 'Why it is unsafe to reach, and the plan for it',
} as const satisfies Readonly<Record<MonitoringKind, string>>

/** Valves by their tags, and how each of them is reached with a meter. */
export function MonitorForm({ rule, onDone }: { rule: LeakRule; onDone: () => void }) {
  const today = format(useSiteToday(), 'yyyy-MM-dd')
  const [typed, setTyped] = useState('')
  const [kind, setKind] = useState<MonitoringKind>('ordinary')
  const [note, setNote] = useState('')
  const [since, setSince] = useState(today)
  const [isTried, setIsTried] = useState(false)
  const save = useMonitorValves()
  const { tags, fault } = tagsIn(typed)
  const noteFault = kind !== 'ordinary' && note.trim() === '' ? 'Is needed: it stands on the route' : undefined
  const sinceFault = since === '' ? 'Is needed' : undefined
  const send = (ruleId: string | null) => {
    setIsTried(true)
    const isWhole = fault === null && sinceFault === undefined && (ruleId === null || noteFault === undefined)
    if (isWhole) save.mutate({ tags: [...tags], ruleId, kind, note, since }, { onSuccess: () => setTyped('') })
  }
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    send(rule.ruleId)
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={`Valves under ${rule.name}`}>
      <Tags typed={typed} count={tags.length} fault={isTried && !save.isSuccess ? fault : null} onChange={setTyped} />
      <div className={css.fields}>
        <ChoiceInput
          label="To reach with a meter"
          value={kind}
          choices={choicesOf(MonitoringKind.options)}
          onChange={(chosen) => setKind(MonitoringKind.parse(chosen))}
        />
        <TextInput label={whyOf[kind]} maxLength={300} value={note} onChange={setNote} fault={isTried ? noteFault : undefined} />
        <TextInput
          label="Under it since"
          type="date"
          value={since}
          onChange={setSince}
          fault={isTried ? sinceFault : undefined}
        />
      </div>
      {save.error && <ProblemNote error={save.error} />}
      {save.isSuccess && (
        <p role="status">
          {save.variables.ruleId === null
            ? `${counted(save.data.valves, 'valve is', 'valves are')} under no rule now.`
            : `${counted(save.data.valves, 'valve is', 'valves are')} under ${rule.name} now.`}
        </p>
      )}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          Put these valves under it
        </button>
        <button type="button" disabled={save.isPending} onClick={() => send(null)}>
          Take these valves out of any rule
        </button>
        <button type="button" onClick={onDone}>
          Close
        </button>
      </div>
    </form>
  )
}

interface TagsProps {
  typed: string
  count: number
  fault: string | null
  onChange: (typed: string) => void
}

function Tags({ typed, count, fault, onChange }: TagsProps) {
  const id = useId()
  return (
    <label className={css.tags}>
      <span className="soft">Tags of the valves</span>
      <textarea
        rows={4}
        value={typed}
        aria-invalid={fault !== null}
        aria-describedby={id}
        onChange={({ target }) => onChange(target.value)}
      />
      <span id={id}>
        <span className="soft">
          {count === 0 ? `one a line, or with commas between; ${MOST_TAGS} at most` : counted(count, 'tag')}
        </span>
        {fault !== null && <b className="hot"> {fault}</b>}
      </span>
    </label>
  )
}
