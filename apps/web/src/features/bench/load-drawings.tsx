import type { glandTorque } from '@glandkeeper/bench/load/gland-torque'
import type { stemEffort } from '@glandkeeper/bench/load/stem-effort'
import type { torqueToStress } from '@glandkeeper/bench/load/stress-from-torque'
import type { stressProfile } from '@glandkeeper/bench/load/stress-profile'
import type { studThread } from '@glandkeeper/bench/threads/stud-thread'
import { effortBarsDrawing } from '@glandkeeper/drawings/effort-bars'
import { stressProfileDrawing } from '@glandkeeper/drawings/stress-profile'
import { stressRangeDrawing } from '@glandkeeper/drawings/stress-range'
import { studThreadDrawing } from '@glandkeeper/drawings/stud-thread'
import { torqueStairDrawing } from '@glandkeeper/drawings/torque-stair'
import { usualStressRules } from '@glandkeeper/engines/load/required-stress'
import { usualUtilisationLimit } from '@glandkeeper/engines/load/stud-strength'
import { knownThread } from '@glandkeeper/engines/threads/known-thread'
import { Drawn } from '../../ui/drawn.tsx'
import { type Draws, draws } from './drawable.ts'
import { effortsOf } from './efforts.ts'

const leastStresses = Object.entries(usualStressRules).map(([packing, { leastStress }]) => ({ packing, stress: leastStress }))

export const loadDrawings: Draws = {
  'gland-torque': draws<typeof glandTorque>('gland-torque', ({ answer, room }) => (
    <Drawn drawing={torqueStairDrawing({ ...answer, limit: usualUtilisationLimit, room })} />
  )),
  'stress-from-torque': draws<typeof torqueToStress>('stress-from-torque', ({ answer, room }) => (
    <Drawn drawing={stressRangeDrawing({ ...answer, least: leastStresses, room })} />
  )),
  'stress-profile': draws<typeof stressProfile>('stress-profile', ({ answer, room }) => (
    <Drawn drawing={stressProfileDrawing({ stresses: answer.stresses.map(({ stress }) => stress), room })} />
  )),
  'stem-effort': draws<typeof stemEffort>('stem-effort', ({ given, answer, room }) => {
    const efforts = effortsOf(given, answer)
    // Friction beside nothing to compare it with is a figure, and stands below as one.
    return efforts.length > 0 && <Drawn drawing={effortBarsDrawing({ efforts, room })} />
  }),
  'stud-thread': draws<typeof studThread>('stud-thread', ({ given, answer, room }) => {
    const known = knownThread(given.studThread)
    const series = known.ok ? known.thread.series : null
    return (
      <Drawn
        drawing={studThreadDrawing({
          designation: given.studThread,
          pitch: answer.pitch,
          isWhitworth: series === 'BSW' || series === 'BSF',
          turns: given.turns,
          room,
        })}
      />
    )
  }),
}
