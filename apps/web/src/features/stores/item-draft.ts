import type { BodyIn } from '@glandkeeper/contract/endpoint'
import type { addStockItem, ItemKind, StockItem } from '@glandkeeper/contract/stores'
import { figureOf } from '../readings/index.ts'

/** What says which thing it is, beside its kind and name. */
export type SizeField = 'section' | 'boxBore' | 'stemDiameter' | 'length'
type FigureField = SizeField | 'leadTimeDays' | 'leastStock' | 'packSize'

/** An item as typed, before it is known to fit the contract. */
export type ItemDraft = Readonly<Record<FigureField | 'name' | 'thread', string>> & {
  readonly kind: ItemKind
  readonly family: string | null
}

interface AskedOf {
  readonly family: boolean
  readonly thread: boolean
  readonly sizes: readonly SizeField[]
}

/** What is asked of each kind, as the contract has it. */
export const asked: Readonly<Record<ItemKind, AskedOf>> = {
  cord: { family: true, thread: false, sizes: ['section'] },
  'die-formed ring': { family: true, thread: false, sizes: ['boxBore', 'stemDiameter'] },
  stud: { family: false, thread: true, sizes: ['length'] },
  nut: { family: false, thread: true, sizes: [] },
  spacer: { family: false, thread: false, sizes: ['boxBore', 'stemDiameter', 'length'] },
}

const asText = (value: number | null | undefined) => (value === null || value === undefined ? '' : String(value))

export function itemDraftOf(item: StockItem | null): ItemDraft {
  return {
    kind: item?.kind ?? 'cord',
    name: item?.name ?? '',
    family: item?.family ?? null,
    thread: item?.thread ?? '',
    section: asText(item?.section),
    boxBore: asText(item?.boxBore),
    stemDiameter: asText(item?.stemDiameter),
    length: asText(item?.length),
    leadTimeDays: asText(item?.leadTimeDays),
    leastStock: asText(item?.leastStock ?? 0),
    packSize: asText(item?.packSize),
  }
}

/** What is sent. Of what a kind does not have, nothing; an empty figure is no number, which the contract says in words. */
export function itemOfDraft(draft: ItemDraft): BodyIn<typeof addStockItem> {
  const { family, thread, sizes } = asked[draft.kind]
  const figure = (field: FigureField) => figureOf(draft[field]) ?? Number.NaN
  const sized = (field: SizeField) => (sizes.includes(field) ? figureOf(draft[field]) : null)
  return {
    kind: draft.kind,
    name: draft.name,
    family: family ? draft.family : null,
    section: sized('section'),
    boxBore: sized('boxBore'),
    stemDiameter: sized('stemDiameter'),
    thread: thread && draft.thread.trim() !== '' ? draft.thread : null,
    length: sized('length'),
    leadTimeDays: figure('leadTimeDays'),
    leastStock: figure('leastStock'),
    packSize: figure('packSize'),
  }
}
