import { type Celsius, type Ratio } from '@glandkeeper/units/quantity'
import type { FamilyFigures } from './families.ts'

export type Phase = 'steam' | 'gas' | 'liquid' | 'slurry'

/** One thing said of a family in one service; a note says something and decides nothing. */
export interface Reason {
  readonly code: `${string}/${string}`
  readonly standing: 'within' | 'near' | 'outside' | 'not known' | 'note'
  /** Share of the limit used: 1 is at the limit. Null where nothing is compared. */
  readonly used: Ratio | null
  /** Part of a sentence, with the figures. */
  readonly detail: string
}

const NEAR = 0.9
const NO_BREAK_SPACE = '\u00a0'

/** A figure with its unit, a true minus, and no more decimals than a person wrote. */
export function said(value: number, unit: string): string {
  const figure = String(Number(value.toFixed(1))).replace('-', '−')
  return unit === 'pH' ? `pH${NO_BREAK_SPACE}${figure}` : `${figure}${NO_BREAK_SPACE}${unit}`
}

interface Compared {
  readonly subject: 'temperature' | 'pressure'
  readonly value: number | null
  /** Null where there is no limit below: vacuum asks less than pressure. */
  readonly lowest: number | null
  readonly highest: number
  readonly unit: '°C' | 'bar'
}

/** One figure of the service against the limits of a family. */
export function inRange({ subject, value, lowest, highest, unit }: Compared): Reason {
  if (value === null)
    return {
      code: `${subject}/not-known`,
      standing: 'not known',
      used: null,
      detail: `the ${subject} of the valve is not recorded`,
    }
  const used = shareUsed(value, lowest, highest)
  const range = lowest === null ? `at most ${said(highest, unit)}` : `${said(lowest, unit)} to ${said(highest, unit)}`
  if (value > highest)
    return outside(
      `${subject}/over`,
      used,
      `${said(value, unit)} is ${said(value - highest, unit)} over its limit of ${said(highest, unit)}`,
    )
  if (lowest !== null && value < lowest)
    return outside(
      `${subject}/under`,
      used,
      `${said(value, unit)} is ${said(lowest - value, unit)} under its limit of ${said(lowest, unit)}`,
    )
  const isLowSide = lowest !== null && value - lowest < highest - value
  const room = isLowSide ? value - lowest : highest - Math.max(value, lowest ?? 0)
  const standing = used >= NEAR ? 'near' : 'within'
  return {
    code: `${subject}/${standing}`,
    standing,
    used,
    detail: `${said(value, unit)} of ${range}: ${said(room, unit)} to spare`,
  }
}

function outside(code: Reason['code'], used: Ratio, detail: string): Reason {
  return { code, standing: 'outside', used, detail }
}

/** Nought in the middle of a range or without pressure, 1 at the limit. Halved before it is taken apart: no overflow. */
export function shareUsed(value: number, lowest: number | null, highest: number): Ratio {
  if (lowest === null) return (Math.max(value, 0) / highest) as Ratio
  const half = highest / 2 - lowest / 2
  return Math.abs((value - (lowest / 2 + highest / 2)) / half) as Ratio
}

/** Steam has a limit of its own. */
export function temperatureLimits(figures: FamilyFigures, phase: Phase): readonly [lowest: Celsius, highest: Celsius] {
  return [figures.lowestTemperature, phase === 'steam' ? figures.highestSteamTemperature : figures.highestTemperature]
}
