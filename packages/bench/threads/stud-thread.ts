import { StudThread } from '@glandkeeper/contract/glands'
import { nutTurns } from '@glandkeeper/contract/events'
import { knownThread } from '@glandkeeper/engines/threads/known-thread'
import { mistakableThreads } from '@glandkeeper/engines/threads/mistakable-threads'
import { spannersOf } from '@glandkeeper/engines/threads/nut-spanner'
import { stressArea } from '@glandkeeper/engines/threads/stress-area'
import { travelOfTurns } from '@glandkeeper/engines/threads/stud-threads'
import { mm, turns } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator, NUTS_IN_SERVICE } from '../calculator.ts'
import { area, length, sentences, signedLength } from '../figures.ts'

const FLATS_PER_TURN = 6

export const studThread = calculator({
  name: 'stud-thread',
  shelf: 'threads',
  title: 'Turns and travel',
  question: 'How far does the follower go in half a turn, and which spanner fits?',
  input: z.strictObject({ studThread: StudThread.meta({ title: 'Stud thread' }), turns: nutTurns.default(turns(0.5)) }),
  output: z.object({
    travel: signedLength('The follower moves', 0.001),
    pitch: length('In one turn', 0.001),
    perFlat: length('In one flat of the nut', 0.001),
    spanners: z
      .array(
        z.object({
          marking: z.string().meta({ title: 'Spanner' }),
          acrossFlats: length('Across flats'),
          hexagon: z.string().meta({ title: 'Nut' }),
        }),
      )
      .meta({ title: 'Spanner' }),
    stressArea: area('Area that carries the load'),
    method: z.string().meta({ title: 'Area by' }),
    lookAlikes: sentences('Threads to be mistaken for it'),
  }),
  example: { studThread: 'M12', turns: 0.5 },
  notes: { turns: 'turns, or flats: 3 flats', studThread: 'as on a drawing: M12, 1/2-13 UNC, 1/2-12 BSW' },
  formula: ['travel = turns · pitch', 'one flat of a hexagon nut = 1/6 turn'],
  limits: 'Holds while the nut bears on the follower. A nut alone does not tell its thread: count the threads of the stud.',
  sources: ['SRC-201', 'SRC-202', 'SRC-203', 'SRC-204'],
  caution: NUTS_IN_SERVICE,
  compute({ studThread: designation, turns: taken }) {
    const known = knownThread(designation)
    const travel = travelOfTurns(designation, taken)
    const spanners = spannersOf(designation)
    const carrying = stressArea(designation)
    const likes = mistakableThreads(designation)
    if (!known.ok) return { ok: false, problem: { ...known.problem, field: 'studThread' } }
    if (!travel.ok || !spanners.ok || !carrying.ok || !likes.ok) {
      return {
        ok: false,
        problem: { code: 'thread/unknown', field: 'studThread', detail: `${designation} is not a thread we know` },
      }
    }
    return {
      ok: true,
      travel: travel.travel,
      pitch: known.thread.pitch,
      perFlat: mm(known.thread.pitch / FLATS_PER_TURN),
      spanners: spanners.spanners.map((spanner) => ({ ...spanner })),
      stressArea: carrying.area,
      method: carrying.method,
      lookAlikes: likes.threads.map(({ caution }) => caution),
    }
  },
})
