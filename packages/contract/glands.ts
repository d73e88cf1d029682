import { z } from 'zod'
import { count, quantity } from './quantity.ts'
import { text } from './text.ts'

/** One-piece: the bush that presses the rings and the flange are one casting. Two-piece: a bush under a bridge. */
export const FollowerKind = z.enum(['one-piece', 'two-piece'])
export const StudGrade = z.enum(['4.6', '5.8', '8.8', '10.9', '12.9', 'B7', 'unknown'])
export const Lubrication = z.enum(['dry', 'oiled', 'paste', 'unknown'])

export const boxBore = quantity({ label: 'Box bore', unit: 'mm', min: 3, max: 600, step: 0.1, usual: [10, 150] })
export const stemDiameter = quantity({ label: 'Stem diameter', unit: 'mm', min: 2, max: 500, step: 0.1, usual: [6, 120] })
export const boxDepth = quantity({ label: 'Box depth', unit: 'mm', min: 3, max: 1500, step: 0.5, usual: [15, 200] })
export const noseLength = quantity({ label: 'Nose length', unit: 'mm', min: 1, max: 500, step: 0.5, usual: [6, 80] })
export const leastEngagement = quantity({ label: 'Least engagement', unit: 'mm', min: 0, max: 100, step: 0.1, usual: [1, 10] })
export const keepClear = quantity({ label: 'Keep clear', unit: 'mm', min: 0, max: 50, step: 0.1, usual: [1, 6] })

/** A thread is named as on a drawing: `M12`, `1/2-13 UNC`, `1/2-12 BSW`. The list is in engines/threads. */
export const StudThread = text(24, 2)

/**
 * The sealing arrangement of one stem. What nobody has measured yet is null; what follows from it is then
 * not computed rather than guessed.
 */
export const Gland = z.strictObject({
  boxBore: boxBore.nullable(),
  stemDiameter: stemDiameter.nullable(),
  boxDepth: boxDepth.nullable(),
  followerKind: FollowerKind.nullable(),
  noseLength: noseLength.nullable(),
  leastEngagement,
  keepClear,
  studThread: StudThread.nullable(),
  studCount: count('Studs', 1, 24, [2, 8]).nullable(),
  studGrade: StudGrade,
  lubrication: Lubrication,
})
export type Gland = z.infer<typeof Gland>
