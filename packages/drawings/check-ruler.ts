import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path } from './drawing.ts'

const SIDE = 6
const TICK = { one: 4, five: 6, ten: 9 } as const
const BASE = 24

/**
 * A rule to lay a rule against: it shows whether a sheet was printed at its true size.
 *
 * @example checkRuler({ length: mm(50), perMillimetre: 2 }).width // → 112
 */
export function checkRuler({ length, perMillimetre }: { readonly length: Millimetre; readonly perMillimetre: number }): Drawing {
  const at = (mm: number) => SIDE + mm * perMillimetre
  const ticks = Array.from({ length: Math.floor(length) + 1 }, (_, mm) => {
    const tall = mm % 10 === 0 ? TICK.ten : mm % 5 === 0 ? TICK.five : TICK.one
    return line([at(mm), BASE - tall], [at(mm), BASE])
  })
  const tens = Array.from({ length: Math.floor(length / 10) + 1 }, (_, count) => count * 10)
  return {
    width: at(length) + SIDE,
    height: BASE + 4,
    says: `A rule of ${length} mm, to check that the sheet is printed at its true size`,
    shapes: [
      path(line([at(0), BASE], [at(length), BASE]), 'out'),
      path(ticks.join(''), 'thin'),
      ...tens.map((ten) => lettering(String(ten), [at(ten), BASE - TICK.ten - 3], { size: 11 })),
    ],
  }
}
