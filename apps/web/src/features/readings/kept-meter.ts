import { z } from 'zod'
import { keep, kept } from '../../platform/kept.ts'

const Meter = z.object({ instrument: z.string().max(60), calibratedOn: z.iso.date().or(z.literal('')) })
/** What a screening value was read with; empty is not said. */
export type Meter = Readonly<z.infer<typeof Meter>>

const KEY = 'meter'
const noMeter: Meter = { instrument: '', calibratedOn: '' }

/** That of the last sighting on this device: a round is walked with one meter, calibrated once. */
export const keptMeter = (): Meter => kept(KEY, Meter) ?? noMeter
export const keepMeter = ({ instrument, calibratedOn }: Meter) => keep(KEY, { instrument, calibratedOn })
