import type { Fault } from '@glandkeeper/contract/problem'
import type { StockItem } from '@glandkeeper/contract/stores'
import { useQuery } from '@tanstack/react-query'
import { formatDay } from '../../platform/site-time.ts'
import { faultBeside } from '../../ui/fault-beside.ts'
import { ChoiceInput, choicesOf, TextInput } from '../../ui/field.tsx'
import { outagesOfSite } from '../repacks/queries.ts'
import { formatAmount, lotsWord, lotWord } from './amount-words.ts'
import { forWhom, manyFault, manyIn, type MovementAct, type MovementDraft } from './movement-draft.ts'

export interface MovementFieldsProps {
  act: MovementAct
  item: StockItem
  draft: MovementDraft
  told: readonly Fault[]
  /** After the first try what is no count is said beside it. */
  isTried: boolean
  onChange: (change: Partial<MovementDraft>) => void
}

type TextName = 'amount' | 'label' | 'batch' | 'expiresOn' | 'expectedOn' | 'tag' | 'takenAt' | 'note'

/** What is asked for each act; nothing that it has no use for. */
export function MovementFields(props: MovementFieldsProps) {
  const { act, item, draft, told, onChange } = props
  const text = (name: TextName) => ({
    value: draft[name],
    onChange: (value: string) => onChange({ [name]: value }),
    fault: faultBeside(name, draft[name], told),
    autoComplete: 'off',
  })
  const unit = item.unit === 'm' ? 'm' : 'pieces'
  const amountOf: Readonly<Record<MovementAct, string>> = {
    order: `Ordered, ${unit}`,
    receive: item.unit === 'm' ? 'Length of each, m' : 'Pieces in each',
    issue: `Issued, ${unit}`,
    return: `Returned, ${unit}`,
    count: `Really there, ${unit}`,
  }
  return (
    <>
      {act === 'receive' && <ReceiveFields {...props} />}
      {act !== 'order' && act !== 'receive' && <LotChoice {...props} />}
      <TextInput label={amountOf[act]} isFigure inputMode="decimal" {...text('amount')} />
      {act === 'order' && <TextInput label="Expected on" type="date" {...text('expectedOn')} />}
      {act === 'receive' && (
        <>
          <TextInput label="Batch" hint="as printed on it" maxLength={40} {...text('batch')} />
          <TextInput label="Good until" type="date" hint="empty where it does not expire" {...text('expiresOn')} />
        </>
      )}
      {act === 'issue' && <WhomFields {...props} />}
      <TextInput label="When" type="datetime-local" hint="empty for now" {...text('takenAt')} />
      <TextInput label="Note" maxLength={200} {...text('note')} />
    </>
  )
}

function ReceiveFields({ item, draft, told, isTried, onChange }: MovementFieldsProps) {
  const { kind, unit, onOrder, packSize } = item
  return (
    <>
      {onOrder.length > 0 && (
        <ChoiceInput
          label="Came of the order"
          hint="it is then no more awaited"
          value={draft.orderId}
          choices={[
            ...onOrder.map(({ orderId, amount, expectedOn }) => ({
              value: orderId,
              words: `${formatAmount(amount, unit)}, expected ${formatDay(expectedOn)}`,
            })),
            { value: '', words: 'none of these' },
          ]}
          onChange={(orderId) => {
            const order = onOrder.find((each) => each.orderId === orderId)
            onChange({ orderId, ...(order && { many: manyIn(order.amount, packSize) }) })
          }}
          fault={faultBeside('orderId', draft.orderId, told)}
        />
      )}
      <TextInput
        label={`How many ${lotsWord(kind)}`}
        isFigure
        inputMode="numeric"
        autoComplete="off"
        value={draft.many}
        onChange={(many) => onChange({ many })}
        fault={isTried ? (manyFault(draft.many) ?? undefined) : undefined}
      />
      <TextInput
        label={`What is written on the ${lotWord(kind)}`}
        hint="of several: on the first; the others are numbered on"
        maxLength={36}
        autoComplete="off"
        value={draft.label}
        onChange={(label) => onChange({ label })}
        fault={faultBeside('label', draft.label, told)}
      />
    </>
  )
}

function LotChoice({ item: { kind, lots, unit }, draft, told, onChange }: MovementFieldsProps) {
  return (
    <ChoiceInput
      label={`Which ${lotWord(kind)}`}
      value={draft.lotId === '' ? null : draft.lotId}
      choices={lots.map(({ lotId, label, batch, amount }) => ({
        value: lotId,
        words: `${label}, batch ${batch}, ${formatAmount(amount, unit)} left`,
      }))}
      onChange={(lotId) => onChange({ lotId })}
      fault={faultBeside('lotId', draft.lotId, told) && 'Say which'}
    />
  )
}

function WhomFields({ draft, told, onChange }: MovementFieldsProps) {
  const outages = useQuery(outagesOfSite)
  const open = outages.data?.outages.filter(({ state }) => state === 'planned') ?? []
  return (
    <>
      <ChoiceInput
        label="For"
        value={draft.whom}
        choices={choicesOf(forWhom)}
        onChange={(whom) => onChange({ whom: forWhom.find((each) => each === whom) ?? 'not said' })}
      />
      {draft.whom === 'a valve' && (
        <TextInput
          label="Tag of the valve"
          autoComplete="off"
          maxLength={40}
          value={draft.tag}
          onChange={(tag) => onChange({ tag })}
          fault={faultBeside('tag', draft.tag, told)}
        />
      )}
      {draft.whom === 'an outage' && (
        <ChoiceInput
          label="Outage"
          value={draft.outageId === '' ? null : draft.outageId}
          choices={open.map(({ outageId, name, likelyOn }) => ({ value: outageId, words: `${name}, ${formatDay(likelyOn)}` }))}
          onChange={(outageId) => onChange({ outageId })}
          fault={faultBeside('outageId', draft.outageId, told) && 'Say which'}
        />
      )}
    </>
  )
}
