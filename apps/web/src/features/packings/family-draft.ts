import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { addFamily, figureNames, type FigureName, type SiteFamily } from '@glandkeeper/contract/packings'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { readTyped } from '../settings/queries.ts'
import { metaOf } from './family-words.ts'

export type AboutDraft = Pick<SiteFamily, 'form' | 'description' | 'cautions'>

/** A family as typed: figures stay text until it is saved. */
export interface FamilyDraft extends AboutDraft {
  readonly name: string
  readonly figures: Readonly<Record<FigureName, string>>
}

/** No figure is filled in: each is to be read from the sheet of what is bought. */
export const newDraft: FamilyDraft = {
  name: '',
  form: 'braided',
  description: '',
  cautions: [],
  figures: Object.fromEntries(figureNames.map((figure) => [figure, ''])) as Record<FigureName, string>,
}

/** The draft as the contract reads it, or every fault with its place. */
export function checkDraft(
  draft: FamilyDraft,
): { family: BodyIn<typeof addFamily>; faults?: never } | { family?: never; faults: Fault[] } {
  const read = figureNames.map((figure) => ({ figure, ...readTyped(draft.figures[figure], metaOf(figure)) }))
  const unread = read.flatMap(({ figure, fault }) =>
    fault === undefined ? [] : [{ pointer: `#/figures/${figure}`, detail: fault }],
  )
  const figures = Object.fromEntries(read.map(({ figure, value }) => [figure, value]))
  const { figures: _, ...rest } = draft
  const parsed = addFamily.body.safeParse({ ...rest, figures })
  if (parsed.success) return { family: { ...parsed.data } }
  const others = faultsOf(parsed.error).filter(({ pointer }) => !pointer.startsWith('#/figures/'))
  return { faults: [...others, ...unread] }
}
