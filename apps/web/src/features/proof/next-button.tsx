import { Faults } from '../readings/index.ts'
import type { GapVerdict } from './gap-verdict.ts'
import type { ProofPlan } from './plan.ts'
import type { ProofDraft } from './proof-draft.ts'
import { repackInWords } from './repack-entry.ts'
import { nextAct } from './steps.ts'
import look from './proof.module.css'

interface NextButtonProps {
  draft: ProofDraft
  plan: ProofPlan
  verdict: GapVerdict | null
  faults: readonly string[]
  onChange: (change: Partial<ProofDraft>) => void
  onSave: () => void
}

/** What is first to be said in a step whose next act cannot be taken for granted. */
const wanted = { rings: 'Say how many rings go in', wheel: 'Say what the wheel does', gap: 'Read both gaps' } as const

/** One big button for the thumb: it ticks the next thing, goes on to the next step, and at the end saves. */
export function NextButton({ draft, plan, verdict, faults, onChange, onSave }: NextButtonProps) {
  const act = nextAct(draft, plan, verdict?.verdict ?? null)
  return (
    <>
      <Faults faults={faults} />
      {draft.at === 'save' ? (
        <button type="button" className={`main ${look.main}`} onClick={onSave}>
          Save it
          <small>{repackInWords(draft)}</small>
        </button>
      ) : act ? (
        <button type="button" className={`main ${look.main}`} onClick={() => onChange(act.change)}>
          {act.words}
          <small>{act.small}</small>
        </button>
      ) : (
        <p className={look.wanted}>{draft.at !== 'load' && wanted[draft.at]}</p>
      )}
    </>
  )
}
