import { Cut } from '@glandkeeper/contract/events'
import { ChoiceRow, FamilySelect, SectionStepper } from '../readings/index.ts'
import type { StepProps } from './step-props.ts'
import { FromStore, TorqueAndCrew } from './store-and-crew.tsx'
import look from './proof.module.css'

/** What the entry will say beside the ticks: the cut card's word until somebody says what really went in. */
export function LookItOver({ draft, plan, gland, onChange }: StepProps) {
  return (
    <>
      <p>What went in, where it is not what the cut card says:</p>
      <FamilySelect value={plan.family} onChange={(family) => onChange({ family })} />
      <div className={look.figures}>
        <SectionStepper short="section, mm" value={plan.section} onChange={(section) => onChange({ section })} />
      </div>
      <ChoiceRow label="Cut" choices={Cut.options} value={plan.cut} onChange={(cut) => onChange({ cut })} />
      <div>
        <FromStore draft={draft} plan={plan} gland={gland} onChange={onChange} />
        <TorqueAndCrew draft={draft} plan={plan} onChange={onChange} />
      </div>
      <label className={look.words}>
        <span>Note</span>
        <textarea rows={2} maxLength={400} value={draft.note} onChange={({ target }) => onChange({ note: target.value })} />
      </label>
    </>
  )
}
