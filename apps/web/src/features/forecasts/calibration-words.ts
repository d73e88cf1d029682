import type { CalibrationRow, ShareSeen } from '@glandkeeper/contract/calibration'
import { formatMillimetres } from '@glandkeeper/units/format'
import { counted, formatCount } from '../../ui/count.ts'

const NBSP = '\u00a0'

/** @example percent(0.814) // → '81 %' */
export function percent(share: number): string {
  return `${Math.round(share * 100)}${NBSP}%`
}

/** @example shareInWords({ share: 0.81, lower: 0.75, upper: 0.86 }) // → '81 % (75 to 86 %)' */
export function shareInWords({ share, lower, upper }: ShareSeen): string {
  return `${percent(share)} (${Math.round(lower * 100)} to ${percent(upper)})`
}

/** @example readingsInWords('1') // → '1 reading' */
export function readingsInWords(span: string): string {
  return `${span} reading${span === '1' ? '' : 's'}`
}

/** @example daysInWords(1234.4) // → '1,234 days' */
export function daysInWords(count: number): string {
  const whole = Math.round(count)
  return `${formatCount(whole)}${NBSP}day${whole === 1 ? '' : 's'}`
}

/** How often dates fell inside their interval, in one sentence with the figures, and what that says. */
export function coverageInWords(row: CalibrationRow): string {
  const from = `${counted(row.forecasts, 'forecast')} of ${counted(row.lives, 'packing life').replace('lifes', 'lives')}`
  if (row.unknownBecause === 'too few lives') return `Too few to tell: ${from}, and fewer than 10 lives say nothing.`
  if (row.within80 === null) return `Not to be told yet: of ${from} none has been watched to the end of its 80${NBSP}% interval.`
  const { share, lower, upper } = row.within80
  const limits = `(${Math.round(lower * 100)} to ${percent(upper)})`
  const said = `Of ${from}, ${percent(share)} of the dates fell inside their 80${NBSP}% interval ${limits}`
  // Lives that end in a repack leave the count just before their date: a verdict on the model would be one on the repacks.
  if (row.ranOut * 2 < row.forecasts)
    return `${said}. Only ${formatCount(row.ranOut)} of them saw the travel used up, the others a repack before or no end yet: glands repacked because their travel was nearly used up make this share too low, so it is no verdict.`
  return `${said}: ${verdictOn({ lower, upper })}.`
}

function verdictOn({ lower, upper }: Pick<ShareSeen, 'lower' | 'upper'>): string {
  if (upper < 0.8) return 'fewer than should be, so the intervals are too narrow here'
  if (lower > 0.8) return 'more than should be, so the intervals are wider than need be'
  return 'no more and no fewer than chance allows'
}

/** How far off the middle of the forecasts was, with a straight line beside it on the same forecasts. */
export function missInWords({ middleMiss, besideStraightLine }: CalibrationRow, level: number): string {
  if (middleMiss === null) return 'No life of these has run out yet, so nobody knows how far off the middle was.'
  const middle = `Where ${level === 0 ? 'the travel was used up' : `the reserve fell to ${formatMillimetres(level)}`}, the middle was off by ${daysInWords(middleMiss.days)} or less in half of ${counted(middleMiss.forecasts, 'forecast')}.`
  if (besideStraightLine === null) return middle
  const { forecasts, days, straightLineDays } = besideStraightLine
  return `${middle} A straight line could be drawn for ${formatCount(forecasts)} of them: there it was off by ${daysInWords(straightLineDays)}, the forecast by ${daysInWords(days)}.`
}
