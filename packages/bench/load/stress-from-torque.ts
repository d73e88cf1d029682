import { boxBore, Lubrication, stemDiameter, StudThread } from '@glandkeeper/contract/glands'
import { count } from '@glandkeeper/contract/quantity'
import { stressFromTorque, usualNutFactors } from '@glandkeeper/engines/load/nut-torque'
import { knownThread } from '@glandkeeper/engines/threads/known-thread'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator, NUTS_IN_SERVICE } from '../calculator.ts'
import { stress, torque } from '../figures.ts'

export const torqueToStress = calculator({
  name: 'stress-from-torque',
  shelf: 'load',
  title: 'From a measured torque',
  question: 'What stress is on the packing at this torque?',
  input: z.strictObject({
    torque: torque('Torque on each nut'),
    boxBore,
    stemDiameter,
    studThread: StudThread.meta({ title: 'Stud thread' }),
    studCount: count('Studs', 1, 24, [2, 8]).default(2),
    lubrication: Lubrication.meta({ title: 'Thread and nut face' }).default('unknown'),
  }),
  output: z.object({ usual: stress('Likely stress'), lowest: stress('At least'), highest: stress('At most') }),
  example: { torque: 24, boxBore: 45, stemDiameter: 28, studThread: 'M12', studCount: 2, lubrication: 'oiled' },
  notes: { lubrication: 'the spread of its nut factor is from memory', torque: 'N·m, or 18 ft·lb' },
  formula: ['load of one stud = torque / (nut factor · stud diameter)', 'stress = studs · load / (π/4 · (bore² − stem²))'],
  limits:
    'Of a nut that was just turned: a torque measured later tells what breaks it loose. The spread is that of the nut factor alone.',
  sources: ['SRC-402', 'SRC-403', 'SRC-404', 'SRC-405'],
  caution: NUTS_IN_SERVICE,
  compute({ studThread, lubrication, ...input }) {
    const thread = knownThread(studThread)
    if (!thread.ok) return at(thread, { designation: 'studThread' })
    return stressFromTorque({ ...input, studDiameter: thread.thread.nominalDiameter, nutFactor: usualNutFactors[lubrication] })
  },
})
