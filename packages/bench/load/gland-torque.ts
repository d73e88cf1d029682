import { boxBore, Lubrication, stemDiameter, StudGrade, StudThread } from '@glandkeeper/contract/glands'
import { count } from '@glandkeeper/contract/quantity'
import { pressure } from '@glandkeeper/contract/valves'
import { glandLoad } from '@glandkeeper/engines/load/gland-load'
import { nutTorque, torqueSteps, usualNutFactors, usualTorqueShares } from '@glandkeeper/engines/load/nut-torque'
import { requiredStress, usualStressRules } from '@glandkeeper/engines/load/required-stress'
import { studUtilisation, usualUtilisationLimit } from '@glandkeeper/engines/load/stud-strength'
import { knownThread } from '@glandkeeper/engines/threads/known-thread'
import { type Newton, newtons } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator } from '../calculator.ts'
import { area, fineShare, force, sentences, share, stress, torque } from '../figures.ts'

const Form = z.enum(['braided', 'die-formed']).meta({ title: 'Packing' })

export const glandTorque = calculator({
  name: 'gland-torque',
  shelf: 'load',
  title: 'Gland load and torque',
  question: 'How tight, in what steps, and can the studs bear it?',
  input: z.strictObject({
    boxBore,
    stemDiameter,
    pressure,
    form: Form.default('braided'),
    pressureFactor: share('Stress over pressure', 10).default(usualStressRules.braided.pressureFactor),
    leastStress: stress('Least stress').optional(),
    studThread: StudThread.meta({ title: 'Stud thread' }),
    studCount: count('Studs', 1, 24, [2, 8]).default(2),
    lubrication: Lubrication.meta({ title: 'Thread and nut face' }).default('unknown'),
    nutFactor: fineShare('Nut factor').optional(),
    studGrade: StudGrade.meta({ title: 'Grade of the studs' }).default('unknown'),
  }),
  output: z.object({
    requiredStress: stress('Stress on the packing'),
    setBy: z.string().meta({ title: 'Set by' }),
    torque: torque('Torque on each nut').nullable(),
    steps: z.array(z.object({ share: share('Share'), torque: torque('Torque') })).meta({ title: 'In steps, nuts in turn' }),
    area: area('Area of the packing'),
    glandLoad: force('Load of the gland'),
    loadPerStud: force('Load of one stud'),
    nutFactorTaken: fineShare('Nut factor taken'),
    gradeTaken: z.string().meta({ title: 'Studs judged as' }),
    utilisation: share('Share of the studs’ proof stress', 1e9),
    utilisationAtMost: share('The same, should the nuts run smooth', 1e9),
    says: sentences('Mind'),
  }),
  example: {
    boxBore: 45,
    stemDiameter: 28,
    pressure: 12,
    studThread: 'M12',
    studCount: 2,
    lubrication: 'oiled',
    studGrade: '8.8',
  },
  notes: {
    pressureFactor: 'common practice, no source: your site decides',
    leastStress: 'empty: 26.2 MPa die-formed, 37.9 MPa braided; common practice, no source',
    nutFactor: 'empty: the usual one for the lubrication, from memory',
    studGrade: 'as marked on the stud; not known is a fair answer',
  },
  formula: [
    'stress = the greater of factor · pressure and the least stress',
    'load = stress · π/4 · (bore² − stem²)',
    'torque of each nut = nut factor · load / studs · stud diameter',
  ],
  limits:
    'Equal studs and nuts drawn equally; no friction of the follower in the box. The nut factor is an average: at one torque the load differs by a tenth either way with oil, a fifth dry or with paste, and from a third less to four fifths more where the lubrication is not known. The packing relaxes after loading: move the stem and load again.',
  sources: ['SRC-401', 'SRC-402', 'SRC-403', 'SRC-404', 'SRC-405', 'SRC-406', 'SRC-407', 'SRC-408', 'SRC-409', 'SRC-410'],
  caution:
    'Nuts a quarter turn at a time, alternately and equally. Stop when the stem grows stiff: a stiff stem is a finding. Site procedure, permit and qualified persons decide.',
  compute({
    form,
    pressure: systemPressure,
    pressureFactor,
    leastStress,
    studThread,
    lubrication,
    nutFactor,
    studGrade,
    ...box
  }) {
    const wanted = requiredStress({
      systemPressure,
      pressureFactor,
      leastStress: leastStress ?? usualStressRules[form].leastStress,
    })
    if (!wanted.ok) return at(wanted, { systemPressure: 'pressure' })
    const load = glandLoad({ ...box, packingStress: wanted.requiredStress })
    if (!load.ok) return load
    const thread = knownThread(studThread)
    if (!thread.ok) return at(thread, { designation: 'studThread' })
    const { low, usual } = usualNutFactors[lubrication]
    const nutFactorTaken = nutFactor ?? usual
    const nut = nutTorque({
      glandLoad: load.glandLoad,
      studCount: box.studCount,
      studDiameter: thread.thread.nominalDiameter,
      nutFactor: nutFactorTaken,
    })
    if (!nut.ok) return nut
    const stepped = torqueSteps(nut.torque, usualTorqueShares)
    if (!stepped.ok) return stepped
    // Of studs nobody can read the weakest are assumed. At one torque smooth nuts press harder than the average.
    const grade = studGrade === 'unknown' ? WEAKEST_GRADE : studGrade
    const judge = (loadPerStud: Newton) =>
      studUtilisation({ designation: studThread, grade, loadPerStud, utilisationLimit: usualUtilisationLimit })
    const atAverage = judge(load.loadPerStud)
    const atMost = judge(newtons((load.loadPerStud * usual) / low))
    if (!atAverage.ok) return at(atAverage, { designation: 'studThread', grade: 'studGrade' })
    if (!atMost.ok) return at(atMost, { designation: 'studThread', grade: 'studGrade' })
    const isBeyond = atAverage.standing === 'beyond strength'
    return {
      ok: true,
      requiredStress: wanted.requiredStress,
      setBy: wanted.setBy === 'pressure' ? 'the pressure' : 'the least stress of this packing',
      torque: isBeyond ? null : nut.torque,
      steps: isBeyond ? [] : stepped.steps.map((step) => ({ ...step })),
      area: load.area,
      glandLoad: load.glandLoad,
      loadPerStud: load.loadPerStud,
      nutFactorTaken,
      gradeTaken: studGrade === 'unknown' ? `${WEAKEST_GRADE}, the weakest: read the mark on the stud` : studGrade,
      utilisation: atAverage.utilisation,
      utilisationAtMost: atMost.utilisation,
      says: studsInWords(atAverage.standing, atMost.standing),
    }
  },
})

const WEAKEST_GRADE = '4.6'

type StudStanding = 'within limit' | 'above limit' | 'beyond strength'

function studsInWords(usual: StudStanding, atMost: StudStanding): string[] {
  if (usual === 'beyond strength')
    return ['the studs cannot bear this load, so no torque is given: look for another packing or ask the engineer']
  const limit =
    usual === 'above limit' ? ['the studs would carry more than 70 % of their proof stress: ask the engineer before loading'] : []
  if (atMost === 'beyond strength')
    return [
      ...limit,
      'should the nuts run smoother than the average, this torque would stretch the studs: let the gap decide, and stop early',
    ]
  return atMost === 'above limit' && limit.length === 0
    ? ['should the nuts run smoother than the average, the studs would carry more than 70 % of their proof stress']
    : limit
}
