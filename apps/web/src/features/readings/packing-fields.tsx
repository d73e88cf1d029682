import { Cut } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { ringLength } from '@glandkeeper/engines/gland/ring-length'
import { mm } from '@glandkeeper/units/quantity'
import { ChoiceRow } from './choice-row.tsx'
import type { DraftFieldsProps } from './draft.ts'
import { FamilySelect } from './family-select.tsx'
import { RingsStepper, SectionStepper } from './packing-steppers.tsx'
import type { WantedPacking } from './reel-choices.ts'
import { ReelFields } from './reel-fields.tsx'
import look from './pad.module.css'

type PackingFieldsProps = DraftFieldsProps & { card: ValveCard }

/** New packing, or a ring on top of the old. */
export function PackingFields(props: PackingFieldsProps) {
  return props.draft.kind === 'repacked' ? <RepackFields {...props} /> : <RingFields {...props} />
}

function RepackFields({ draft, onChange }: DraftFieldsProps) {
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

/** Rings that go on top are cut one by one, without a wrap more. */
function RingFields({ draft, card, onChange }: PackingFieldsProps) {
  return (
    <>
      <div className={look.gaps}>
        <span>Rings</span>
        <RingsStepper
          label="Rings added"
          short="no."
          value={draft.ringsAdded}
          onChange={(ringsAdded) => onChange({ ringsAdded })}
        />
      </div>
      <ReelFields
        source={draft}
        wanted={wantedOf(card)}
        rings={draft.ringsAdded}
        wrapsMore={0}
        onChange={(change) => onChange(change)}
      />
    </>
  )
}

function wantedOf({ valve: { gland }, state }: ValveCard): WantedPacking {
  const { boxBore, stemDiameter } = gland
  const isMeasured = boxBore !== null && stemDiameter !== null && boxBore > stemDiameter
  const section = isMeasured ? (boxBore - stemDiameter) / 2 : null
  const ring = section !== null && stemDiameter !== null ? ringLength({ stemDiameter, section: mm(section) }) : null
  return { family: state.packingFamily, section, boxBore, stemDiameter, ringLength: ring?.ok ? ring.midLength : null }
}
