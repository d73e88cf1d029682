import { describe, expect, it } from 'vitest'
import { inParts } from './parts.ts'

const valves = (...boundaries: string[]) => boundaries.map((isolatedAs, index) => ({ tag: index + 1, isolatedAs }))
const tagsIn = (parts: readonly (readonly { readonly tag: number }[])[]) => parts.map((part) => part.map(({ tag }) => tag))

describe('valves of an outage in parts', () => {
  it('those of one boundary stand together, where the first of them is met', () => {
    expect(tagsIn(inParts(valves('a', 'b', 'a', 'c')))).toEqual([[1, 3, 2, 4]])
  })

  it('a boundary that has no room in a part begins the next one', () => {
    expect(tagsIn(inParts(valves('a', 'a', 'b', 'b', 'c'), 3))).toEqual([
      [1, 2],
      [3, 4, 5],
    ])
  })

  it('only a boundary that is more than a part is torn', () => {
    expect(tagsIn(inParts(valves('a', 'b', 'b', 'b', 'b'), 3))).toEqual([[1], [2, 3, 4], [5]])
  })

  it('81 valves by themselves make two parts of 40 and one of one; none make none', () => {
    expect(inParts(valves(...Array.from({ length: 81 }, (_, index) => String(index)))).map(({ length }) => length)).toEqual([
      40, 40, 1,
    ])
    expect(inParts([])).toEqual([])
  })
})
