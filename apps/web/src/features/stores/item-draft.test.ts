import { itemKinds, StockItemInput } from '@glandkeeper/contract/stores'
import { expect, test } from 'vitest'
import { type ItemDraft, itemDraftOf, itemOfDraft } from './item-draft.ts'

const filled: ItemDraft = {
  ...itemDraftOf(null),
  name: 'Graphite 8',
  family: 'graphite braid',
  thread: 'M12',
  section: '8',
  boxBore: '45',
  stemDiameter: '28,5',
  length: '85',
  leadTimeDays: '21',
  leastStock: '8',
  packSize: '8',
}

test('of every kind what is asked makes an item that the contract takes', () => {
  for (const kind of itemKinds) {
    const checked = StockItemInput.safeParse(itemOfDraft({ ...filled, kind }))
    expect([kind, checked.error?.issues]).toEqual([kind, undefined])
  }
})

test('what was typed for another kind is not sent', () => {
  expect(itemOfDraft({ ...filled, kind: 'nut' })).toMatchObject({ family: null, section: null, length: null, thread: 'M12' })
  expect(itemOfDraft(filled)).toMatchObject({ family: 'graphite braid', section: 8, boxBore: null, thread: null })
  expect(itemOfDraft({ ...filled, kind: 'die-formed ring' })).toMatchObject({ stemDiameter: 28.5, section: null })
})

test('what is missing is said by the contract, field by field', () => {
  const { error } = StockItemInput.safeParse(itemOfDraft({ ...filled, packSize: '', leadTimeDays: 'soon' }))
  expect(error?.issues.map(({ path }) => path.join('.'))).toEqual(['leadTimeDays', 'packSize'])
  const needed = StockItemInput.safeParse(itemOfDraft({ ...filled, section: '', family: null }))
  expect(needed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['family', 'section'])
})
