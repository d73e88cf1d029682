import { LeakRuleInput } from '@glandkeeper/contract/leak-rules'
import type { Fault } from '@glandkeeper/contract/problem'
import { innermost, type QuantityMeta, quantities } from '@glandkeeper/contract/quantity'
import type { ReactNode } from 'react'
import { faultBeside } from '../../ui/fault-beside.ts'
import { NumberInput } from '../../ui/field.tsx'
import css from './leak-rules.module.css'
import { type CleanStep, nextRow, type PercentStep } from './rule-draft.ts'

const MOST_STEPS = 10
const cleanShape = LeakRuleInput.shape.lengthening.element.shape
const percentShape = LeakRuleInput.shape.byPercent.element.shape
const metaOf = (schema: Parameters<typeof innermost>[0]): QuantityMeta => {
  const meta = quantities.get(innermost(schema))
  if (!meta) throw new Error('every number of a rule is a quantity')
  return meta
}
const cleanFields = { cleanLooks: metaOf(cleanShape.cleanLooks), everyDays: metaOf(cleanShape.everyDays) }
const percentFields = {
  atMostPercent: { ...metaOf(percentShape.atMostPercent), label: 'At most leaking' },
  afterPeriods: { ...metaOf(percentShape.afterPeriods), label: 'For quarters in a row' },
  everyDays: metaOf(percentShape.everyDays),
}

interface StepsProps<Step> {
  steps: readonly Step[]
  told: readonly Fault[]
  onChange: (steps: readonly Step[]) => void
}

export function CleanSteps({ steps, told, onChange }: StepsProps<CleanStep>) {
  return (
    <Steps
      legend="Longer between looks after clean ones"
      place="lengthening"
      fields={cleanFields}
      blank={{ cleanLooks: '', everyDays: '' }}
      {...{ steps, told, onChange }}
    />
  )
}

export function PercentSteps({ steps, told, onChange }: StepsProps<PercentStep>) {
  return (
    <Steps
      legend="Longer between looks where few of all valves leak"
      place="byPercent"
      fields={percentFields}
      blank={{ atMostPercent: '', afterPeriods: '', everyDays: '' }}
      {...{ steps, told, onChange }}
    />
  )
}

interface AllStepsProps<Step, Field extends string> extends StepsProps<Step> {
  legend: string
  /** Where they stand in the rule: faults name it. */
  place: string
  fields: Readonly<Record<Field, QuantityMeta>>
  blank: Readonly<Record<Field, string>>
}

/** Rows of figures that come and go. */
function Steps<Field extends string, Step extends { readonly row: number } & Readonly<Record<Field, string>>>(
  props: AllStepsProps<Step, Field>,
): ReactNode {
  const { legend, place, fields, blank, steps, told, onChange } = props
  const names = Object.keys(fields) as Field[]
  const whole = told.find(({ pointer }) => pointer === `#/${place}`)
  return (
    <fieldset className={css.steps}>
      <legend>{legend}</legend>
      {whole && (
        <p role="alert" className={css.fault}>
          {whole.detail}
        </p>
      )}
      {steps.map((step, index) => (
        <div key={step.row} className={css.step}>
          {names.map((name) => (
            <NumberInput
              key={name}
              quantity={fields[name]}
              value={step[name]}
              onChange={(text) => onChange(steps.map((one) => (one.row === step.row ? { ...one, [name]: text } : one)))}
              fault={faultBeside(`${place}/${index}/${name}`, step[name], told)}
            />
          ))}
          <button
            type="button"
            aria-label={`Leave step ${index + 1} out: ${legend}`}
            onClick={() => onChange(steps.filter(({ row }) => row !== step.row))}
          >
            Leave out
          </button>
        </div>
      ))}
      {steps.length < MOST_STEPS && (
        <button type="button" onClick={() => onChange([...steps, { ...blank, row: nextRow(steps) } as unknown as Step])}>
          Add a step
        </button>
      )}
    </fieldset>
  )
}
