import { format } from 'date-fns'
import type { ReactNode } from 'react'
import { loadReelFields, useLaterFields } from '../readings/index.ts'
import { GapStep } from './gap-step.tsx'
import type { GapVerdict } from './gap-verdict.ts'
import { LookItOver } from './look-it-over.tsx'
import type { ProofPlan } from './plan.ts'
import { type ProofDraft, type ProofStep, proofSteps } from './proof-draft.ts'
import type { StepProps } from './step-props.ts'
import { isDone } from './steps.ts'
import { LoadStep, RingsStep } from './tick-steps.tsx'
import { WheelStep } from './wheel-step.tsx'
import look from './proof.module.css'

interface AllStepsProps extends StepProps {
  /** What the gaps say; null until one is read. */
  verdict: GapVerdict | null
  onAnew: () => void
}

const titles: Readonly<Record<ProofStep, string>> = {
  rings: 'Rings in, one by one',
  load: 'Load in steps',
  wheel: 'Let go of the wheel',
  gap: 'Read both gaps',
  save: 'Look it over and save',
}

/** All five in order; one is open, and a touch opens another: somebody may have to go back. */
export function AllSteps({ verdict, onAnew, ...props }: AllStepsProps) {
  const { draft, plan, onChange } = props
  useLaterFields(loadReelFields)
  const contents: Readonly<Record<ProofStep, ReactNode>> = {
    rings: <RingsStep {...props} />,
    load: <LoadStep {...props} />,
    wheel: <WheelStep {...props} />,
    gap: <GapStep {...props} verdict={verdict} />,
    save: <LookItOver {...props} />,
  }
  return (
    <>
      <ol className={look.list}>
        {proofSteps.map((step, index) => (
          <li key={step} aria-current={draft.at === step ? 'step' : undefined}>
            <h2>
              <button type="button" aria-expanded={draft.at === step} onClick={() => onChange({ at: step })}>
                <span className={look.number}>{index + 1}</span>
                <span>{titles[step]}</span>
                <span className={look.fate}>{isDone(step, draft, plan) ? 'done' : progress(step, draft, plan)}</span>
              </button>
            </h2>
            {draft.at === step && <div className={look.content}>{contents[step]}</div>}
          </li>
        ))}
      </ol>
      {(draft.seated > 0 || draft.at !== 'rings') && (
        <p className={look.begun}>
          Begun {format(new Date(draft.begunAt), 'd MMM, HH:mm')}, kept on this device.
          <button type="button" onClick={onAnew}>
            Begin anew
          </button>
        </p>
      )}
    </>
  )
}

function progress(step: ProofStep, { seated, loaded }: ProofDraft, { rings, loads }: ProofPlan): string {
  if (step === 'rings' && rings !== null) return `${seated} of ${rings}`
  if (step === 'load' && loaded > 0) return `${loaded} of ${loads.length}`
  return ''
}
