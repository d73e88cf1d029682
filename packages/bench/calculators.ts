import type { Calculator } from './calculator.ts'
import { cord } from './cut/cord.ts'
import { joints } from './cut/joints.ts'
import { loadedGap } from './cut/loaded-gap.ts'
import { ringLength } from './cut/ring-length.ts'
import { ringSet } from './cut/ring-set.ts'
import { section } from './cut/section.ts'
import { topUp } from './cut/top-up.ts'
import { wornParts } from './cut/worn-parts.ts'
import { airLoss } from './leak/air.ts'
import { drops } from './leak/drops.ts'
import { heliumClass } from './leak/helium.ts'
import { screening } from './leak/screening.ts'
import { steamLoss } from './leak/steam.ts'
import { waterLoss } from './leak/water.ts'
import { steamCost } from './leak/yearly-cost.ts'
import { glandTorque } from './load/gland-torque.ts'
import { rating } from './load/rating.ts'
import { stemEffort } from './load/stem-effort.ts'
import { torqueToStress } from './load/stress-from-torque.ts'
import { stressProfile } from './load/stress-profile.ts'
import { whichPacking } from './packing/which-packing.ts'
import { studThread } from './threads/stud-thread.ts'

/** Every calculator, in the order of the bench. A new one is one file and one line here. */
export const calculators: readonly Calculator[] = [
  section,
  wornParts,
  ringLength,
  ringSet,
  joints,
  cord,
  loadedGap,
  topUp,
  glandTorque,
  torqueToStress,
  stressProfile,
  stemEffort,
  rating,
  studThread,
  whichPacking,
  drops,
  steamLoss,
  waterLoss,
  airLoss,
  steamCost,
  screening,
  heliumClass,
]
