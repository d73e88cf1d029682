import { Cut, MissedReason } from '@glandkeeper/contract/events'
import { ChoiceRow } from './choice-row.tsx'
import type { DraftFieldsProps } from './draft.ts'
import { FamilySelect } from './family-select.tsx'
import { RingsStepper, SectionStepper } from './packing-steppers.tsx'
import look from './pad.module.css'

export function MissedFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <label className={look.kind}>
      <span>Why</span>
      <select
        value={draft.missed ?? ''}
        onChange={({ target }) => onChange({ missed: MissedReason.safeParse(target.value).data ?? null })}
      >
        <option value="">choose</option>
        {MissedReason.options.map((reason) => (
          <option key={reason}>{reason}</option>
        ))}
      </select>
    </label>
  )
}

export function RepackFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <>
      <FamilySelect value={draft.family} onChange={(family) => onChange({ family })} />
      <div className={look.gaps}>
        <span>Rings</span>
        <RingsStepper label="Rings" short="no." value={draft.rings} onChange={(rings) => onChange({ rings })} />
        <SectionStepper short="mm" value={draft.section} onChange={(section) => onChange({ section })} />
      </div>
      <ChoiceRow label="Cut" choices={Cut.options} value={draft.cut} onChange={(cut) => onChange({ cut })} />
      <ChoiceRow
        label="Proved"
        choices={['no overrun', 'overran']}
        value={draft.proved === null ? null : draft.proved ? 'no overrun' : 'overran'}
        onChange={(choice) => onChange({ proved: choice === 'no overrun' })}
      />
    </>
  )
}

export function RingFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <div className={look.gaps}>
      <span>Rings</span>
      <RingsStepper
        label="Rings added"
        short="no."
        value={draft.ringsAdded}
        onChange={(ringsAdded) => onChange({ ringsAdded })}
      />
    </div>
  )
}
