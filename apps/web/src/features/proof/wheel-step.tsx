import { StemFeel } from '@glandkeeper/contract/events'
import { ChoiceRow } from '../readings/index.ts'
import type { StepProps } from './step-props.ts'
import look from './proof.module.css'

const wheelChoices = ['no overrun', 'overran', 'not tried'] as const

const usualProof = [
  'Stem through its whole travel, both ways: it moves freely.',
  'Let go of the wheel in mid-travel: it stops by itself and does not overrun.',
]

/** What the stem and the wheel say about the load that is on. */
export function WheelStep({ draft: { wheel, stem }, card, onChange }: StepProps) {
  return (
    <>
      {(card?.proof.slice(0, 2) ?? usualProof).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <ChoiceRow label="Wheel" choices={wheelChoices} value={wheel} onChange={(choice) => onChange({ wheel: choice })} />
      <ChoiceRow label="Stem" choices={StemFeel.options} value={stem} onChange={(choice) => onChange({ stem: choice })} />
      {adviceOn(wheel, stem).map((line) => (
        <p key={line} role="status" className={look.note}>
          {line}
        </p>
      ))}
    </>
  )
}

/** Where the wheel runs on, the set grips too little; where the stem is stiff, too much. Neither is put right by force. */
function adviceOn(wheel: (typeof wheelChoices)[number] | null, stem: string | null): string[] {
  return [
    wheel === 'overran' &&
      'It overran: the set grips the stem too little. Load to the last torque once more after 3 to 5 strokes, not above it, and try again. If it still overruns, take note: it is saved as not proved. Report it; the site procedure decides.',
    wheel === 'not tried' && 'Not tried is not proved: say so before it goes back.',
    (stem === 'stiff' || stem === 'seized') &&
      `The stem is ${stem}: stop, do not load further. Still isolated, slacken both nuts alike by a flat and try again; if it stays ${stem}, report it before the valve goes back.`,
  ].filter((line) => line !== false)
}
