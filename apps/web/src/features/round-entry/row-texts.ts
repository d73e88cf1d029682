import { LeakGrade, MissedReason, StemFeel } from '@glandkeeper/contract/events'
import { z } from 'zod'

/** The columns of the grid, from left to right. */
export const cells = [
  'time',
  'turnsLeft',
  'turnsRight',
  'gapLeft',
  'gapRight',
  'leakBefore',
  'leakAfter',
  'stem',
  'missed',
  'note',
] as const
export type Cell = (typeof cells)[number]

/** What stands in a row, as typed. */
export const RowTexts = z.record(z.enum(cells), z.string())
export type RowTexts = Readonly<Record<Cell, string>>

export const emptyRow: RowTexts = {
  time: '',
  turnsLeft: '',
  turnsRight: '',
  gapLeft: '',
  gapRight: '',
  leakBefore: '',
  leakAfter: '',
  stem: '',
  missed: '',
  note: '',
}

export const isEmpty = (texts: RowTexts) => cells.every((cell) => texts[cell].trim() === '')

/** Cells in which one of a few words is chosen. */
export const choicesOf: Readonly<Partial<Record<Cell, readonly string[]>>> = {
  leakBefore: LeakGrade.options,
  leakAfter: LeakGrade.options,
  stem: StemFeel.options,
  missed: MissedReason.options,
}

export const cellNames: Readonly<Record<Cell, string>> = {
  time: 'Time',
  turnsLeft: 'Turns left',
  turnsRight: 'Turns right',
  gapLeft: 'Gap left',
  gapRight: 'Gap right',
  leakBefore: 'Leak before',
  leakAfter: 'Leak after',
  stem: 'Stem',
  missed: 'Could not do it',
  note: 'Note',
}

/** A row as it was typed, in one line. @example rowInWords({ ...emptyRow, gapLeft: '7.4' }, 'mm') // → 'gap 7.4 left mm' */
export function rowInWords(texts: RowTexts, gapUnit: string): string {
  const sides = (left: string, right: string) => [left && `${left} left`, right && `${right} right`].filter(Boolean).join(', ')
  const turns = sides(texts.turnsLeft, texts.turnsRight)
  const gaps = sides(texts.gapLeft, texts.gapRight)
  const leaks = [texts.leakBefore && `${texts.leakBefore} before`, texts.leakAfter && `${texts.leakAfter} after`]
  return [
    texts.missed && `could not do it: ${texts.missed}`,
    turns && `turns ${turns}`,
    gaps && `gap ${gaps} ${gapUnit}`,
    leaks.some(Boolean) && `leak ${leaks.filter(Boolean).join(', ')}`,
    texts.stem && `stem ${texts.stem}`,
    texts.note,
  ]
    .filter(Boolean)
    .join('; ')
}
