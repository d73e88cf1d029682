import type { Outage } from '@glandkeeper/contract/outages'
import { type Fault, faultsOf } from '@glandkeeper/contract/problem'
import { type RepackPlanHead, WhatIf } from '@glandkeeper/contract/repack-plans'
import { type SubmitEvent, useState } from 'react'
import { faultBeside } from '../../ui/fault-beside.ts'
import { SwitchInput, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { OutageFields } from './outage-fields.tsx'
import type { usePlanning } from './planning.tsx'
import css from './repacks.module.css'
import { firstDayInWords } from './slot-words.ts'
import { asksNothing, emptyQuestion, whatIfOfDraft } from './what-if-draft.ts'

const NOTHING = 'Change something first: as it is, the answer is the plan itself.'

interface WhatIfFormProps {
  plan: RepackPlanHead
  outages: readonly Outage[]
  planning: ReturnType<typeof usePlanning>
}

/** Slips are a list where they are sent, and stand beside their outage here. */
function besideOutage(fault: Fault, slips: readonly { readonly outageId: string }[]): Fault {
  const index = /^#\/slips\/(\d+)\/weeks$/.exec(fault.pointer)?.[1]
  const slip = index === undefined ? undefined : slips[Number(index)]
  return slip ? { ...fault, pointer: `#/weeks/${slip.outageId}` } : fault
}

/** What would change; the answer covers the same weeks as the plan, and makes the same least. */
export function WhatIfForm({ plan: { planId, weeks, objective }, outages, planning }: WhatIfFormProps) {
  const [name, setName] = useState('')
  const [draft, setDraft] = useState(emptyQuestion)
  const [faults, setFaults] = useState<readonly Fault[]>([])
  const [says, setSays] = useState<string | null>(null)
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    const whatIf = whatIfOfDraft(draft)
    const checked = WhatIf.safeParse(whatIf)
    const isNothing = checked.success && asksNothing(whatIf)
    setFaults(checked.success ? [] : faultsOf(checked.error).map((fault) => besideOutage(fault, whatIf.slips)))
    setSays(isNothing ? NOTHING : null)
    if (checked.success && !isNothing) planning.ask({ name: name.trim() || 'What if', weeks, objective, whatIf, basedOn: planId })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label="What would change">
      {outages.length > 0 && (
        <fieldset className={css.group}>
          <legend>Weeks later; below nought earlier, empty as it is</legend>
          <div className={css.fields}>
            {outages.map(({ outageId, name: outage, ...days }) => (
              <TextInput
                key={outageId}
                label={outage}
                hint={firstDayInWords(days)}
                isFigure
                value={draft.weeks[outageId] ?? ''}
                onChange={(typed) => setDraft({ ...draft, weeks: { ...draft.weeks, [outageId]: typed } })}
                fault={faultBeside(`weeks/${outageId}`, draft.weeks[outageId] ?? '', faults)}
              />
            ))}
          </div>
        </fieldset>
      )}
      <div className={css.fields}>
        <TextInput
          label="Share of the hours that are there, %"
          hint="of every slot"
          isFigure
          inputMode="decimal"
          value={draft.percent}
          onChange={(percent) => setDraft({ ...draft, percent })}
          fault={faultBeside('hoursShare', draft.percent, faults) && 'From 0 to 300'}
        />
        <TextInput
          label="Days that cord and parts come later"
          hint="what is on order, and what could be ordered"
          isFigure
          inputMode="numeric"
          value={draft.lateDays}
          onChange={(lateDays) => setDraft({ ...draft, lateDays })}
          fault={faultBeside('cordLateDays', draft.lateDays, faults)}
        />
        <TextInput label="Name of the answer" hint="empty: What if" maxLength={80} value={name} onChange={setName} />
      </div>
      <SwitchInput
        label="One more outage"
        isOn={draft.hasOneMore}
        onChange={(hasOneMore) => setDraft({ ...draft, hasOneMore })}
      />
      {draft.hasOneMore && (
        <OutageFields
          draft={draft.oneMore}
          onChange={(oneMore) => setDraft({ ...draft, oneMore })}
          faults={faults.map((fault) => ({ ...fault, pointer: fault.pointer.replace('#/oneMoreOutage/', '#/') }))}
        />
      )}
      {says !== null && <p role="alert">{says}</p>}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={planning.isAsking}>
          Work out the answer
        </button>
      </div>
    </form>
  )
}
