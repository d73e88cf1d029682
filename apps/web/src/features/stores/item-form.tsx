import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { itemKinds, ItemKind, type StockItem, StockItemInput } from '@glandkeeper/contract/stores'
import { useQuery } from '@tanstack/react-query'
import { useState, type SubmitEvent } from 'react'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { ChoiceInput, choicesOf, NumberInput, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { siteFamilies } from '../packings/queries.ts'
import { asked, type ItemDraft, itemDraftOf, itemOfDraft } from './item-draft.ts'
import { useSaveItem } from './queries.ts'
import css from './stores.module.css'

type FigureName = 'section' | 'boxBore' | 'stemDiameter' | 'length' | 'leadTimeDays' | 'leastStock' | 'packSize'

/** Adds an item, or changes the one given: what it is, how long it takes to get, and how little is too little. */
export function ItemForm({ item = null, onDone }: { item?: StockItem | null; onDone: () => void }) {
  const [draft, setDraft] = useState(() => itemDraftOf(item))
  const [found, setFound] = useState<readonly Fault[]>([])
  const families = useQuery(siteFamilies)
  const save = useSaveItem(item)
  const told = atItem(faultsTold(save.error, found))
  const change = (part: Partial<ItemDraft>) => setDraft({ ...draft, ...part })
  const { family, thread, sizes } = asked[draft.kind]
  const figure = (name: FigureName) => (
    <FigureField key={name} name={name} draft={draft} told={told} onChange={(value) => change({ [name]: value })} />
  )
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const body = itemOfDraft(draft)
    const checked = StockItemInput.safeParse(body)
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(body, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={item ? `Change ${item.name}` : 'Add an item'}>
      <div className={css.fields}>
        <ChoiceInput
          label="Kind"
          value={draft.kind}
          choices={choicesOf(itemKinds)}
          onChange={(kind) => change({ kind: ItemKind.parse(kind) })}
          fault={faultBeside('kind', draft.kind, told)}
        />
        <TextInput
          label="Name"
          hint="as the storekeeper calls it"
          maxLength={80}
          autoComplete="off"
          value={draft.name}
          onChange={(name) => change({ name })}
          fault={faultBeside('name', draft.name, told)}
        />
        {family && (
          <ChoiceInput
            label="Family"
            value={draft.family}
            choices={choicesOf(namesOf(families.data?.families ?? [], draft.family))}
            onChange={(chosen) => change({ family: chosen })}
            fault={faultBeside('family', draft.family ?? '', told)}
          />
        )}
        {thread && (
          <TextInput
            label="Thread"
            hint="M12, 1/2-13 UNC"
            maxLength={24}
            autoComplete="off"
            value={draft.thread}
            onChange={(text) => change({ thread: text })}
            fault={faultBeside('thread', draft.thread, told)}
          />
        )}
        {[...sizes, 'packSize', 'leastStock', 'leadTimeDays'].map((name) => figure(name as FigureName))}
      </div>
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          {item ? 'Save the item' : 'Add the item'}
        </button>
        <button type="button" onClick={onDone}>
          {item ? 'Leave it as it was' : 'Do not add one'}
        </button>
      </div>
    </form>
  )
}

/** A name nobody lists any more stays what it is. */
function namesOf(families: readonly { readonly name: string }[], chosen: string | null): string[] {
  return [...new Set([...families.map(({ name }) => name), ...(chosen === null ? [] : [chosen])])]
}

interface FigureFieldProps {
  name: FigureName
  draft: ItemDraft
  told: readonly Fault[]
  onChange: (value: string) => void
}

function FigureField({ name, draft, told, onChange }: FigureFieldProps) {
  const quantity = quantities.get(innermost(StockItemInput.shape[name]))
  if (!quantity) return null
  const unit = draft.kind === 'cord' ? 'm' : 'pieces'
  const isAmount = name === 'packSize' || name === 'leastStock'
  return (
    <NumberInput
      quantity={isAmount ? { ...quantity, unit } : quantity}
      value={draft[name]}
      onChange={onChange}
      fault={faultBeside(name, draft[name], told)}
    />
  )
}

/** The server has the item inside what is sent for a change. */
function atItem(faults: readonly Fault[]): Fault[] {
  return faults.map((fault) => ({ ...fault, pointer: fault.pointer.replace(/^#\/item\//, '#/') }))
}
