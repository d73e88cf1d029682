import { mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { type Gland, glandProblems, packingSection } from './gland.ts'

const gland: Gland = {
  boxBore: mm(45),
  stemDiameter: mm(28),
  boxDepth: mm(48),
  noseLength: mm(20),
  leastEngagement: mm(3.2),
  keepClear: mm(3),
  studThread: 'M12',
}

describe('the section', () => {
  it('is half of bore less stem: (45 - 28) / 2 = 8.5', () => {
    expect(packingSection(mm(45), mm(28))).toBe(8.5)
  })

  it('is not known where a diameter is not, or where no ring fits', () => {
    expect(packingSection(null, mm(28))).toBeNull()
    expect(packingSection(mm(28), mm(28))).toBeNull()
  })
})

describe('a gland that cannot exist', () => {
  it.each([
    ['bore as small as the stem', { boxBore: mm(28) }, 'gland/bore-not-larger-than-stem'],
    ['nose shorter than what must be engaged', { noseLength: mm(3.2) }, 'gland/nose-shorter-than-engagement'],
    ['nose as long as the box is deep', { noseLength: mm(48) }, 'gland/nose-longer-than-box'],
  ])('%s', (_, change, code) => {
    expect(glandProblems({ ...gland, ...change }).map((problem) => problem.code)).toEqual([code])
  })

  it('is not one whose dimensions are good, or not measured', () => {
    expect(glandProblems(gland)).toEqual([])
    expect(glandProblems({ ...gland, boxBore: null, stemDiameter: null, boxDepth: null, noseLength: null })).toEqual([])
  })
})
