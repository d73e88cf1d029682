import { count, quantity } from '@glandkeeper/contract/quantity'
import { ringSection } from '@glandkeeper/contract/events'
import { z } from 'zod'

/** Quantities that more than one calculator takes or gives, beside those of the register. */
export const section = ringSection
export const space = quantity({ label: 'Space for the packing', unit: 'mm', min: 0, max: 300, step: 0.01 })
export const rings = count('Rings', 1, 40, [3, 9])
export const cutAngle = quantity({ label: 'Angle of the cut', unit: '°', min: 5, max: 90, step: 1, usual: [30, 90] })
export const share = (label: string, most = 1) => quantity({ label, unit: 'ratio', min: 0, max: most, step: 0.01 })
/** Factors that are known to the thousandth. */
export const fineShare = (label: string) => quantity({ label, unit: 'ratio', min: 0, max: 1, step: 0.001 })
export const length = (label: string, step = 0.1) => quantity({ label, unit: 'mm', min: 0, max: 100_000, step })
export const signedLength = (label: string, step = 0.1) => quantity({ label, unit: 'mm', min: -100_000, max: 100_000, step })
export const stress = (label: string) => quantity({ label, unit: 'MPa', min: 0, max: 10_000, step: 0.1 })
export const force = (label: string) => quantity({ label, unit: 'N', min: 0, max: 1e12, step: 1 })
export const torque = (label: string) => quantity({ label, unit: 'N·m', min: 0, max: 1e9, step: 0.1 })
export const area = (label: string) => quantity({ label, unit: 'mm²', min: 0, max: 1e9, step: 0.1 })
export const angle = (label: string) => quantity({ label, unit: '°', min: 0, max: 360, step: 1 })
export const massFlow = (label: string) => quantity({ label, unit: 'kg/h', min: 0, max: 1e12, step: 0.01 })
export const absolutePressure = quantity({ label: 'Pressure above vacuum', unit: 'bar abs', min: 0, max: 1001.1, step: 0.01 })

/** Plain sentences, each complete in itself. */
export const sentences = (title: string) => z.array(z.string()).meta({ title })
