import type { RepackPlan, RepackSlot } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { type SubmitEvent, useState } from 'react'
import { ChoiceInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { type useMoveRepack, usePinRepack, useUnpinRepack } from './queries.ts'
import { pinInWords } from './reason-words.ts'
import css from './repacks.module.css'
import { slotInWords } from './slot-words.ts'

const WAITS = 'none'

interface MoveRepackProps {
  plan: RepackPlan
  repack: PlannedRepack
  moving: ReturnType<typeof useMoveRepack>
}

/** Another slot now, for a valve and all that is isolated with it; or a word for every plan to come. */
export function MoveRepack({ plan, repack, moving }: MoveRepackProps) {
  const { tag, boundary, slotId, pin } = repack
  const [to, setTo] = useState(slotId ?? WAITS)
  const pinning = usePinRepack()
  const unpinning = useUnpinRepack()
  const isBusy = moving.isPending || pinning.isPending || unpinning.isPending
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    moving.mutate({ tag, slotId: to === WAITS ? null : to })
  }
  // The refusal belongs to the row that was moved, not to another that is open too.
  const refusal = (moving.variables?.tag === tag ? moving.error : null) ?? pinning.error ?? unpinning.error
  return (
    <div className={css.open}>
      {pin && (
        <p className={css.choices}>
          {pinInWords(pin, plan.slots)}.
          <button type="button" disabled={isBusy} onClick={() => unpinning.mutate({ tag, slotId: pin.slotId })}>
            Take out the pin
          </button>
        </p>
      )}
      <form className={css.move} onSubmit={submit} aria-label={`Move or pin ${tag}`}>
        <ChoiceInput label={`Slot of ${tag}`} value={to} choices={slotChoices(plan.slots)} onChange={setTo} />
        <button type="submit" className="main" disabled={isBusy || to === (slotId ?? WAITS)}>
          Move it there
        </button>
        {to !== WAITS && (
          <>
            <button type="button" disabled={isBusy} onClick={() => pinning.mutate({ tag, slotId: to, kind: 'in' })}>
              Pin it there
            </button>
            <button type="button" disabled={isBusy} onClick={() => pinning.mutate({ tag, slotId: to, kind: 'not in' })}>
              Keep it out of there
            </button>
          </>
        )}
      </form>
      <p className="soft">
        {boundary !== '' && `All of this plan that is isolated by boundary ${boundary} moves with it. `}A move changes this plan
        and pins it there; a pin alone holds for plans to come and leaves this one as it is.
      </p>
      {refusal && <ProblemNote error={refusal} />}
    </div>
  )
}

/** Waiting, then outages, then fortnights, each in their order. */
function slotChoices(slots: readonly RepackSlot[]) {
  const outagesFirst = slots.toSorted((one, other) => Number(other.kind === 'outage') - Number(one.kind === 'outage'))
  return [
    { value: WAITS, words: 'no slot: it waits' },
    ...outagesFirst.map((slot) => ({ value: slot.slotId, words: slotInWords(slot) })),
  ]
}
