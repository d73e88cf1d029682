import type { Fault } from '@glandkeeper/contract/problem'
import { faultBeside } from '../../ui/fault-beside.ts'
import { NumberInput } from '../../ui/field.tsx'
import css from './crews.module.css'
import { placeFields, quantityOfWalk, stairsFields, type StairsTexts, type WalkDraft, withMoreStairs } from './walk-draft.ts'

/** As many as the contract takes. */
const MOST_STAIRS = 50

interface WayInFieldsProps {
  wayIn: WalkDraft['wayIn']
  told: readonly Fault[]
  onChange: (wayIn: WalkDraft['wayIn']) => void
}

/** Where the walk begins, on the plan of the site. */
export function WayInFields({ wayIn, told, onChange }: WayInFieldsProps) {
  return (
    <fieldset className={css.group}>
      <legend>Way in: all three, or none where nobody has measured it</legend>
      <div className={css.figures}>
        {placeFields.map((field) => (
          <NumberInput
            key={field}
            quantity={quantityOfWalk(field)}
            value={wayIn[field]}
            onChange={(text) => onChange({ ...wayIn, [field]: text })}
            fault={faultBeside(`walkPlan/wayIn/${field}`, wayIn[field], told)}
          />
        ))}
      </div>
    </fieldset>
  )
}

interface StairsFieldsProps {
  stairs: WalkDraft['stairs']
  told: readonly Fault[]
  onChange: (stairs: WalkDraft['stairs']) => void
}

/** The stairs between levels, one row each. */
export function StairsFields({ stairs, told, onChange }: StairsFieldsProps) {
  return (
    <>
      {stairs.map((texts, index) => (
        <OneStairs
          key={texts.row}
          texts={texts}
          index={index}
          told={told}
          onChange={(changed) => onChange(stairs.map((other) => (other.row === changed.row ? changed : other)))}
          onRemove={() => onChange(stairs.filter(({ row }) => row !== texts.row))}
        />
      ))}
      {stairs.length < MOST_STAIRS && (
        <button type="button" onClick={() => onChange(withMoreStairs(stairs))}>
          Add stairs
        </button>
      )}
    </>
  )
}

interface OneStairsProps {
  texts: StairsTexts
  index: number
  told: readonly Fault[]
  onChange: (texts: StairsTexts) => void
  onRemove: () => void
}

function OneStairs({ texts, index, told, onChange, onRemove }: OneStairsProps) {
  return (
    <fieldset className={css.group}>
      <legend>Stairs {index + 1}</legend>
      <div className={css.figures}>
        {stairsFields.map((field) => (
          <NumberInput
            key={field}
            quantity={quantityOfWalk(field)}
            value={texts[field]}
            onChange={(text) => onChange({ ...texts, [field]: text })}
            fault={faultBeside(`walkPlan/stairs/${index}/${field}`, texts[field], told)}
          />
        ))}
        <button type="button" className={css.quiet} aria-label={`Remove stairs ${index + 1}`} onClick={onRemove}>
          Remove
        </button>
      </div>
    </fieldset>
  )
}
