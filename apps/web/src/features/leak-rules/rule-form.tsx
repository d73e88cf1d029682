import { Correlation, type LeakRule, LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import { type Fault, faultsOf } from '@glandkeeper/contract/problem'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { type SubmitEvent, useState } from 'react'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { ChoiceInput, choicesOf, NumberInput, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './leak-rules.module.css'
import { useSaveRule } from './queries.ts'
import { emptyRule, type RuleDraft, ruleDraftOf, type RuleFigure, ruleFigures, ruleOfDraft } from './rule-draft.ts'
import { CleanSteps, PercentSteps } from './rule-steps.tsx'

interface RuleFormProps {
  /** The rule that is changed; null adds one. */
  rule: LeakRule | null
  /** What the fields begin with. */
  start: LeakRuleInput | null
  exampleOf: string | null
  onDone: (rule: LeakRule | null) => void
}

const labels: Partial<Record<RuleFigure, string>> = {
  leakFrom: 'A leak from, net of background',
  difficultEveryDays: 'Days between looks, where difficult',
  percentAllowed: 'May leak at most, empty for any share',
  leastValves: 'Fewer leaking valves than this are never too many',
}

const ALLOWED = 'is allowed'
const TOO_MUCH = 'is too much'

/** Every figure of a rule. Faults stand beside their fields; what contradicts itself, over the steps it is about. */
export function RuleForm({ rule, start, exampleOf, onDone }: RuleFormProps) {
  const [draft, setDraft] = useState(() => (start ? ruleDraftOf(start) : emptyRule))
  const [found, setFound] = useState<readonly Fault[]>([])
  const save = useSaveRule(rule, exampleOf)
  const told = atRule(faultsTold(save.error, found))
  const change = (part: Partial<RuleDraft>) => setDraft({ ...draft, ...part })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const body = ruleOfDraft(draft)
    const checked = LeakRuleInput.safeParse(body)
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(body, { onSuccess: (saved) => onDone(saved) })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={rule ? `Change ${rule.name}` : 'Add a rule'}>
      <div className={css.fields}>
        <TextInput
          label="Name"
          maxLength={80}
          autoComplete="off"
          value={draft.name}
          onChange={(name) => change({ name })}
          fault={faultBeside('name', draft.name, told)}
        />
        {ruleFigures.map((name) => (
          <FigureField key={name} name={name} draft={draft} told={told} onChange={(text) => change({ [name]: text })} />
        ))}
        <ChoiceInput
          label="That percentage itself"
          hint="codes say more than, or at least"
          value={draft.percentItselfIsAbove ? TOO_MUCH : ALLOWED}
          choices={choicesOf([ALLOWED, TOO_MUCH])}
          onChange={(choice) => change({ percentItselfIsAbove: choice === TOO_MUCH })}
        />
        <ChoiceInput
          label="What a reading is worth in kg/h"
          hint="published correlation for losses"
          value={draft.correlation}
          choices={choicesOf(Correlation.options)}
          onChange={(correlation) => change({ correlation: Correlation.parse(correlation) })}
        />
      </div>
      <CleanSteps steps={draft.lengthening} told={told} onChange={(lengthening) => change({ lengthening })} />
      <PercentSteps steps={draft.byPercent} told={told} onChange={(byPercent) => change({ byPercent })} />
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          {rule ? 'Save the rule' : 'Add the rule'}
        </button>
        <button type="button" onClick={() => onDone(null)}>
          {rule ? 'Leave it as it was' : 'Do not add one'}
        </button>
      </div>
    </form>
  )
}

interface FigureFieldProps {
  name: RuleFigure
  draft: RuleDraft
  told: readonly Fault[]
  onChange: (text: string) => void
}

function FigureField({ name, draft, told, onChange }: FigureFieldProps) {
  const quantity = quantities.get(innermost(LeakRuleInput.shape[name]))
  if (!quantity) return null
  return (
    <NumberInput
      quantity={quantity}
      label={labels[name] ?? quantity.label}
      value={draft[name]}
      onChange={onChange}
      fault={faultBeside(name, draft[name], told)}
    />
  )
}

/** The server has the rule inside what is sent. */
function atRule(faults: readonly Fault[]): Fault[] {
  return faults.map((fault) => ({ ...fault, pointer: fault.pointer.replace(/^#\/rule\//, '#/') }))
}
