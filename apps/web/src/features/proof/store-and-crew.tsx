import type { ValveCard } from '@glandkeeper/contract/pocket'
import { Suspense } from 'react'
import { ChoiceRow, FigureStepper, ReelFields } from '../readings/index.ts'
import { Disclosure } from './disclosure.tsx'
import { WRAPS_MORE } from './plan.ts'
import { torqueReached } from './repack-entry.ts'
import type { StepProps } from './step-props.ts'
import look from './proof.module.css'

type PartProps = Pick<StepProps, 'draft' | 'plan' | 'onChange'>

/** Where the packing came from. */
export function FromStore({ draft, plan, gland, onChange }: PartProps & { gland: ValveCard['valve']['gland'] }) {
  const { boxBore, stemDiameter } = gland
  const wanted = { family: plan.family, section: plan.section, boxBore, stemDiameter, ringLength: plan.ringLength }
  const short = [draft.batch.trim() !== '' && `batch ${draft.batch.trim()}`, draft.reel?.says.split(' · ')[0]].filter(Boolean)
  return (
    <Disclosure words="Batch and reel" short={short.join(', ') || 'not said'}>
      <Suspense fallback={<p className="soft">Looking at the store</p>}>
        <ReelFields
          source={draft}
          wanted={wanted}
          rings={plan.rings}
          wrapsMore={WRAPS_MORE}
          // A reel of another packing says what really went in.
          onChange={(change, other) => onChange({ ...change, ...(other && reallyIn(other)) })}
        />
      </Suspense>
    </Disclosure>
  )
}

/** Of a box of rings the section is that of the gland. */
function reallyIn({ family, section }: { family: string | null; section: number | null }) {
  return { ...(family !== null && { family }), ...(section !== null && { section }) }
}

/** The torque that was reached, and who did it where that is to be told apart. */
export function TorqueAndCrew({ draft, plan, onChange }: PartProps) {
  const reached = torqueReached(draft, plan)
  const short = [reached !== null && `${reached.toFixed(1)} N·m`, draft.doneBy].filter(Boolean).join(', ')
  return (
    <Disclosure words="Torque, and who did it" short={short || 'not said'}>
      <div className={look.figures}>
        <FigureStepper
          label="Torque reached, N·m"
          short="N·m"
          value={draft.torque}
          guess={torqueReached({ ...draft, torque: null }, plan)}
          step={0.5}
          onChange={(torque) => onChange({ torque })}
        />
        <span className="soft">on each nut, as last loaded</span>
      </div>
      <ChoiceRow
        label="By"
        choices={['own crew', 'contractor']}
        value={draft.doneBy}
        onChange={(doneBy) => onChange({ doneBy })}
      />
      {draft.doneBy !== null && (
        <label className={look.words}>
          <span>{draft.doneBy === 'contractor' ? 'Name of the contractor' : 'Name, or crew'}</span>
          <input
            type="text"
            maxLength={60}
            autoComplete="off"
            value={draft.doneByName}
            onChange={({ target }) => onChange({ doneByName: target.value })}
          />
        </label>
      )}
    </Disclosure>
  )
}
