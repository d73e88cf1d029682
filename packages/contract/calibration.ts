import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { count, quantity } from './quantity.ts'
import { reserve } from './reserve.ts'
import { everybody } from './roles.ts'

/** Forecasts as they were said with an entry, or made again from the readings of their time with the newest fit. */
export const ForecastsOf = z.enum(['said', 'replayed'])
export type ForecastsOf = z.infer<typeof ForecastsOf>

const share = (label: string) => quantity({ label, unit: 'ratio', min: 0, max: 1, step: 0.01 })
const off = (label: string) => quantity({ label, unit: 'day', min: 0, max: 1e6, step: 1 })
const many = (label: string) => count(label, 0, 1_000_000_000)

const seen = { share: share('Share seen'), lower: share('Lower limit'), upper: share('Upper limit') }
const ShareSeen = z.object(seen)
export type ShareSeen = z.infer<typeof ShareSeen>

const CalibrationRow = z.object({
  name: z.string(),
  forecasts: many('Forecasts'),
  lives: many('Lives'),
  /** Forecasts whose life ran out; the others were watched for a time. */
  ranOut: many('Forecasts whose life ran out'),
  within80: ShareSeen.nullable(),
  within95: ShareSeen.nullable(),
  unknownBecause: z.enum(['too few lives', 'not watched long enough']).nullable(),
  middleMiss: z.object({ forecasts: many('Forecasts'), days: off('Middle off by') }).nullable(),
  /** The same forecasts, where a straight line had a date too. */
  besideStraightLine: z
    .object({ forecasts: many('Forecasts'), days: off('Middle off by'), straightLineDays: off('Straight line off by') })
    .nullable(),
})
export type CalibrationRow = z.infer<typeof CalibrationRow>

const Calibration = z.object({
  of: ForecastsOf,
  /** The reserve whose day was forecast: none for what was said. */
  level: reserve,
  /** The fit that replayed forecasts start from; null before the first. */
  fittedAt: z.iso.datetime().nullable(),
  valves: many('Valves'),
  valvesLookedAt: many('Valves looked at'),
  overall: CalibrationRow,
  byReadings: z.array(CalibrationRow),
  byGroup: z.array(CalibrationRow),
  /** Chance forecast, and the share whose date had come by then. Empty with too few lives. */
  curve: z.array(z.object({ chance: share('Chance forecast'), ...seen })),
})
export type Calibration = z.infer<typeof Calibration>

/** How the forecasts of the past turned out. */
export const showCalibration = endpoint({
  method: 'GET',
  path: '/api/forecasts/calibration',
  who: everybody,
  query: z.strictObject({ of: ForecastsOf }),
  ok: Calibration,
  status: 200,
})
