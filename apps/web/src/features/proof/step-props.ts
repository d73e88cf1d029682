import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { ProofPlan } from './plan.ts'
import type { ProofDraft } from './proof-draft.ts'

/** What every step is shown with. */
export interface StepProps {
  draft: ProofDraft
  plan: ProofPlan
  /** Null where none is known on this device. */
  card: CutCard | null
  gland: ValveCard['valve']['gland']
  onChange: (change: Partial<ProofDraft>) => void
}
