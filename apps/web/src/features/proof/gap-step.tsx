import type { Gland } from '@glandkeeper/contract/glands'
import { GapFields } from '../readings/index.ts'
import type { StepProps } from './all-steps.tsx'
import { gapVerdict } from './gap-verdict.ts'
import type { ProofDraft } from './proof-draft.ts'
import { withOneMoreRing } from './steps.ts'
import look from './proof.module.css'

interface GapStepProps extends StepProps {
  gland: Gland
  onAll: (draft: ProofDraft) => void
}

/** Where the follower stands now, what that says about the set, and the way back for one more ring. */
export function GapStep({ draft, plan, card, gland, onChange, onAll }: GapStepProps) {
  const { rings, section } = plan
  const found = gapVerdict(
    { gland, gap: card?.gap ?? null, section, ringsMore: rings === null ? 0 : rings - (card?.rings?.count ?? rings) },
    draft,
  )
  return (
    <>
      {card?.gap && (
        <p>
          Expected <b>{card.gap.expected.toFixed(1)} mm</b>, {card.gap.least.toFixed(1)} to {card.gap.most.toFixed(1)} is right.
        </p>
      )}
      <GapFields gaps={draft} guess={null} onChange={onChange} />
      {found && (
        <p role="status" className={found.verdict === 'good' ? look.good : look.note}>
          {found.says} <b>{found.nextStep}</b>
        </p>
      )}
      {found?.verdict === 'one more ring' && rings !== null && (
        <button type="button" className={look.back} onClick={() => onAll(withOneMoreRing(draft, rings))}>
          One more ring: back to step 1
        </button>
      )}
    </>
  )
}
