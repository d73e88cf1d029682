import { type AreaWalk, changeAreaWalk } from '@glandkeeper/contract/crews'
import { faultsOf } from '@glandkeeper/contract/problem'
import { describe, expect, it } from 'vitest'
import { quantityOfWalk, walkDraftOf, type WalkDraft, walkOfDraft, withMoreStairs } from './walk-draft.ts'

const nothing = { setUpMinutes: null, skill: null, crewId: null, walkPlan: null }
const draftOf = (walk: Partial<AreaWalk>) =>
  walkDraftOf({ areaCode: 'BH', areaName: 'Boiler house', ...nothing, ...walk } as AreaWalk)

const faultsIn = (draft: WalkDraft) => {
  const checked = changeAreaWalk.body.safeParse(walkOfDraft(draft))
  return checked.success ? [] : faultsOf(checked.error).map(({ pointer }) => pointer)
}

describe('how an area is walked, as typed', () => {
  it('comes back as it was, and as nothing where nothing is said', () => {
    const measured = {
      setUpMinutes: 25,
      skill: 'steam',
      crewId: null,
      walkPlan: {
        wayIn: { east: -12.5, north: 40, level: 0 },
        stairs: [{ east: 3, north: 4, lowestLevel: -1, highestLevel: 3 }],
      },
    }
    expect(walkOfDraft(draftOf(measured as Partial<AreaWalk>))).toEqual(measured)
    expect(walkOfDraft(draftOf({}))).toEqual(nothing)
    expect(walkOfDraft({ ...draftOf({}), setUpMinutes: '7,5', skill: ' ' })).toEqual({ ...nothing, setUpMinutes: 7.5 })
  })

  it('has a way in whole or not at all', () => {
    const wayIn = { east: '12', north: '', level: '' }
    expect(faultsIn({ ...draftOf({}), wayIn })).toEqual(['#/walkPlan/wayIn/north', '#/walkPlan/wayIn/level'])
    expect(faultsIn({ ...draftOf({}), wayIn: { east: '12', north: '0', level: '1' } })).toEqual([])
  })

  it('names the figure of the stairs that is wrong', () => {
    const stairs = withMoreStairs([{ row: 0, east: '1', north: '2', lowestLevel: '0', highestLevel: '0.5' }])
    expect(faultsIn({ ...draftOf({}), stairs: [stairs[0]!] })).toEqual(['#/walkPlan/stairs/0/highestLevel'])
    expect(faultsIn({ ...draftOf({}), stairs: [stairs[1]!] })).toHaveLength(4)
  })

  it('gives a new row of stairs a place of its own, whichever were taken away', () => {
    const [, second, third] = withMoreStairs(withMoreStairs(withMoreStairs([])))
    expect(withMoreStairs([second!, third!]).map(({ row }) => row)).toEqual([1, 2, 3])
  })
})

it('knows unit and range of each figure from the contract', () => {
  expect(quantityOfWalk('east')).toMatchObject({ unit: 'm', min: -10_000 })
  expect(quantityOfWalk('highestLevel')).toMatchObject({ unit: '', max: 60 })
})
