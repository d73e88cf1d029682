import { megapascals, mm, newtons, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { proofStress, studStress, studUtilisation } from './stud-strength.ts'

const stud = { designation: 'M12', grade: '8.8', loadPerStud: newtons(13_450), utilisationLimit: ratio(0.7) }

describe('stud strength', () => {
  it('of 13,450 N in M12 is 159.6 MPa, 27.5 % of 580: 13,450 / 84.27', () => {
    const found = studUtilisation(stud)
    expect(found).toMatchObject({ ok: true, proofStress: 580, basis: 'proof', standing: 'within limit' })
    expect(found.ok && found.stress).toBeCloseTo(13_450 / ((Math.PI / 4) * 10.35815 ** 2), 9)
    expect(found.ok && found.utilisation).toBeCloseTo(0.2752, 4)
  })

  it('stands above the limit from 70 % and beyond strength from the whole, at the figure itself not yet', () => {
    const area = (Math.PI / 4) * (12 - 0.9382 * 1.75) ** 2
    const standing = (share: number) => {
      const found = studUtilisation({ ...stud, loadPerStud: newtons(share * 580 * area) })
      return found.ok && found.standing
    }
    expect([0.699, 0.701, 0.999, 1.001].map(standing)).toEqual(['within limit', 'above limit', 'above limit', 'beyond strength'])
  })

  it('of grade 8.8 is higher above 16 mm', () => {
    expect(proofStress('8.8', mm(16))).toMatchObject({ proofStress: 580 })
    expect(proofStress('8.8', mm(18))).toMatchObject({ proofStress: 600 })
  })

  it('of B7 is its yield stress, and not known above 2-1/2 inches', () => {
    expect(proofStress('B7', mm(63.5))).toMatchObject({ proofStress: 724, basis: 'yield' })
    expect(proofStress('B7', mm(64))).toMatchObject({ ok: false, problem: { code: 'stud/grade-unknown' } })
  })

  it.each(['unknown', '', '8,8', 'toString', '__proto__'])('of grade "%s" is refused, while the stress stays known', (grade) => {
    expect(studUtilisation({ ...stud, grade })).toMatchObject({
      ok: false,
      problem: { code: 'stud/grade-unknown', field: 'grade' },
    })
    expect(studStress('M12', stud.loadPerStud)).toMatchObject({ ok: true, method: 'ISO 898-1' })
  })

  it.each([
    [{ designation: 'M12x1.1' }, 'thread/unknown', 'designation'],
    [{ loadPerStud: newtons(-1) }, 'number/negative', 'loadPerStud'],
    [{ utilisationLimit: ratio(0) }, 'number/not-positive', 'utilisationLimit'],
  ])('refuses %o', (wrong, code, field) => {
    expect(studUtilisation({ ...stud, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('is used in proportion to the load', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e5, noNaN: true }), (load) => {
        const [one, two] = [load, 2 * load].map((each) => studUtilisation({ ...stud, loadPerStud: newtons(each) }))
        return one!.ok && two!.ok && Math.abs(two!.utilisation / one!.utilisation - 2) < 1e-12
      }),
    )
  })

  it('takes newtons only', () => {
    // @ts-expect-error a bare number is no load
    studStress('M12', 5000)
    // @ts-expect-error a stress is no load
    studStress('M12', megapascals(100))
  })
})
