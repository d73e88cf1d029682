import { GapFields } from '../readings/index.ts'
import type { GapVerdict } from './gap-verdict.ts'
import type { StepProps } from './step-props.ts'
import look from './proof.module.css'

/** Where the follower stands now, and what that says about the set. */
export function GapStep({ draft, card, verdict, onChange }: StepProps & { verdict: GapVerdict | null }) {
  return (
    <>
      {card?.gap && (
        <p>
          Expected <b>{card.gap.expected.toFixed(1)} mm</b>, {card.gap.least.toFixed(1)} to {card.gap.most.toFixed(1)} is right.
        </p>
      )}
      <GapFields gaps={draft} guess={null} onChange={onChange} />
      {verdict && (
        <p role="status" className={verdict.verdict === 'good' ? look.good : look.note}>
          {verdict.says} <b>{verdict.nextStep}</b>
        </p>
      )}
    </>
  )
}
