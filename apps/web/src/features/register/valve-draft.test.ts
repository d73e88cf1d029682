import { expect, test } from 'vitest'
import { checkDraft, draftOf, faultsByField, newDraft, NOT_KNOWN, rebase, unusualIn, unusualInWords } from './valve-draft.ts'
import { groups, valveFields } from './valve-fields.ts'

const typed = {
  ...newDraft,
  '/tag': 'BM-3307',
  '/areaCode': 'BM',
  '/service': 'condensate',
  '/phase': 'liquid',
  '/valveKind': 'gate',
}

test('every field of a valve is on the form, once', () => {
  expect(groups.flatMap(({ pointers }) => pointers).toSorted()).toEqual([...valveFields.keys()].toSorted())
})

test('a valve put into the form and read back is the same valve', () => {
  const { valve } = checkDraft({ ...typed, '/gland/boxBore': '45', '/temperature': '118', '/gland/followerKind': 'two-piece' })
  if (!valve) throw new Error('the draft has faults')
  expect(checkDraft(draftOf(valve)).valve).toEqual(valve)
})

test('what nobody measured is null, not zero', () => {
  const { valve } = checkDraft({ ...typed, '/gland/boxBore': '', '/gland/followerKind': NOT_KNOWN })
  expect(valve?.gland).toMatchObject({ boxBore: null, followerKind: null })
})

test('a decimal comma is read as a decimal point', () => {
  expect(checkDraft({ ...typed, '/gland/stemDiameter': '28,5' }).valve?.gland.stemDiameter).toBe(28.5)
})

test('every fault is told beside its field', () => {
  const { faults } = checkDraft({ ...typed, '/tag': '', '/phase': '', '/gland/boxBore': '4x', '/gland/keepClear': '99' })
  expect(faults).toEqual({
    '/tag': 'Is needed',
    '/phase': 'Choose one',
    '/gland/boxBore': 'Box bore: must be a number',
    '/gland/keepClear': 'Keep clear: at most 50 mm',
  })
})

test('a fault of the server finds its field whether it comes from adding or from changing', () => {
  const detail = 'the stem does not fit into the box'
  expect(faultsByField([{ pointer: '#/valve/gland/boxBore', detail }]).byField).toEqual({ '/gland/boxBore': detail })
  expect(faultsByField([{ pointer: '#/gland/boxBore', detail }]).byField).toEqual({ '/gland/boxBore': detail })
})

test('two faults of one field are both told, and a fault of no field is kept', () => {
  const { byField, others } = faultsByField([
    { pointer: '#/tag', detail: 'one' },
    { pointer: '#/tag', detail: 'two' },
    { pointer: '#/revision', detail: 'three' },
  ])
  expect(byField).toEqual({ '/tag': 'one; two' })
  expect(others).toEqual([{ pointer: '#/revision', detail: 'three' }])
})

test('a possible but unusual figure is asked about with its usual range', () => {
  const { valve } = checkDraft({ ...typed, '/gland/boxBore': '300' })
  if (!valve) throw new Error('the draft has faults')
  expect(unusualIn(valve).map(unusualInWords)).toEqual(['Box bore 300\u00a0mm is unusual: 10 to 150 is usual.'])
})

test('what somebody else saved meanwhile is taken over, and what was typed here stays', () => {
  const theirs = { ...typed, '/service': 'steam', '/level': '2' }
  const mine = { ...typed, '/service': 'hot water' }
  const { draft, changedThere } = rebase(typed, mine, theirs)
  expect(draft).toMatchObject({ '/service': 'hot water', '/level': '2' })
  expect(changedThere.toSorted()).toEqual(['/level', '/service'])
})
