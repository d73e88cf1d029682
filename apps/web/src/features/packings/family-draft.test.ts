import { figureNames } from '@glandkeeper/contract/packings'
import { describe, expect, it } from 'vitest'
import { checkDraft, newDraft } from './family-draft.ts'

const typed = {
  ...newDraft,
  name: 'graphite in PTFE',
  figures: {
    lowestTemperature: '-40',
    highestTemperature: '536 °F',
    highestSteamTemperature: '220',
    highestPressure: '120',
    lowestPh: '1',
    highestPh: '13',
    consolidation: '22 %',
    friction: '0,09',
    lateralRatio: '.7',
    stressFloor: '18',
    usualLife: '1200',
  },
}

describe('a family as typed', () => {
  it('is read into the units of the program', () => {
    const { family } = checkDraft(typed)
    expect(family?.figures).toMatchObject({ friction: 0.09, consolidation: 0.22, lateralRatio: 0.7 })
    expect(family?.figures.highestTemperature).toBeCloseTo(280, 9)
  })

  it('empty names every fault at once', () => {
    const { faults } = checkDraft(newDraft)
    expect(faults?.map(({ pointer }) => pointer).toSorted()).toEqual(
      ['#/name', ...figureNames.map((figure) => `#/figures/${figure}`)].toSorted(),
    )
  })

  it('with a figure out of range says its range', () => {
    const { faults } = checkDraft({ ...typed, figures: { ...typed.figures, highestPh: '15' } })
    expect(faults).toEqual([{ pointer: '#/figures/highestPh', detail: 'Most caustic: at most pH\u00a014' }])
  })
})
