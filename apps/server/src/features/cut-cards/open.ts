import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { Valve } from '@glandkeeper/contract/valves'
import { findThread } from '@glandkeeper/engines/threads/stud-threads'

type Open = CutCard['open'][number]

/** What the work needs and nobody knows: to measure or to ask, never guessed. */
export function openOf(valve: Pick<Valve, 'gland' | 'pressure' | 'temperature'>, family: SiteFamily | null): Open[] {
  const { gland, pressure, temperature } = valve
  const open = (isOpen: boolean, what: string, says: string): Open[] => (isOpen ? [{ what, says }] : [])
  const thread = gland.studThread
  return [
    ...open(gland.boxBore === null, 'bore, mm', 'bore not measured: measure before cutting'),
    ...open(gland.stemDiameter === null, 'stem, mm', 'stem not measured: measure it inside the box before cutting'),
    ...open(gland.boxDepth === null, 'box depth, mm', 'box depth not measured: measure before counting rings'),
    ...open(gland.noseLength === null, 'nose, mm', 'nose of the follower not measured: measure before counting rings'),
    ...open(family === null, 'packing', 'packing family not known: ask which goes in; ring count, gap and torque wait for it'),
    ...open(pressure === null, 'pressure, bar', 'pressure not recorded: no torque without it, ask before loading'),
    ...open(temperature === null, 'temperature, °C', 'temperature not recorded: ask whether this packing bears it'),
    ...open(thread === null, 'stud thread', 'stud thread not recorded: gauge it before loading'),
    ...open(thread !== null && !findThread(thread).ok, 'stud thread', `stud thread ${thread} is not one we know: gauge it`),
    ...open(gland.studCount === null, 'studs', 'number of studs not recorded: count them, no torque without it'),
    ...open(gland.lubrication === 'unknown', 'lubrication', 'lubrication of the nuts not recorded: the torque is a wide guess'),
    ...open(gland.studGrade === 'unknown', 'stud grade', 'grade of the studs not recorded: read the mark on them'),
  ]
}
