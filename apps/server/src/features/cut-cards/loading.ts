import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Gland } from '@glandkeeper/contract/glands'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { ringSet } from '@glandkeeper/engines/gland/ring-set'
import { glandLoad } from '@glandkeeper/engines/load/gland-load'
import { nutTorque, torqueSteps, usualNutFactors } from '@glandkeeper/engines/load/nut-torque'
import { requiredStress } from '@glandkeeper/engines/load/required-stress'
import { type Outcome, refuse } from '@glandkeeper/engines/outcome'
import { findThread } from '@glandkeeper/engines/threads/stud-threads'
import { reserveRules } from '@glandkeeper/engines/reserve/findings'
import { formatFigure } from '@glandkeeper/units/figure'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { type Bar, type Millimetre, mm, type NewtonMetre, newtons, ratio } from '@glandkeeper/units/quantity'
import type { Refused } from './cutting.ts'
import { type StudStrength, strengthOf } from './stud-strength.ts'

export interface ToLoad {
  readonly gland: Gland
  readonly pressure: Bar | null
  readonly family: SiteFamily | null
  readonly section: Millimetre | null
  readonly rings: number | null
  readonly rules: SettingValues
}

/** How the set is pressed, to what torque, and where the follower should stand then. */
export function loadingOf(valve: ToLoad, refused: Refused): Pick<CutCard, 'gap' | 'load' | 'steps'> {
  const load = loadOf(valve, refused)
  return { gap: gapOf(valve, refused), load, steps: stepsOf(load, valve.rules, refused) }
}

function gapOf({ gland, family, section, rings, rules }: ToLoad, refused: Refused): CutCard['gap'] {
  const { boxDepth, noseLength, leastEngagement, keepClear } = gland
  if (boxDepth === null || noseLength === null || family === null || section === null || rings === null) return null
  const consolidation = family.figures.consolidation.value
  const set = ringSet({ boxDepth, section, consolidation, noseLength, leastEngagement, keepClear, rings })
  if (!set.ok) {
    refused(set)
    return null
  }
  const [inTheWay] = set.findings
  if (inTheWay) {
    refused(refuse(inTheWay, 'gap when loaded', noTravel[inTheWay]))
    return null
  }
  const allowed = rules.gapTolerance * set.consolidatedHeight
  return {
    expected: set.expectedGap,
    // A follower that stands on the box presses nothing: the gap may never be less than what is kept clear.
    least: mm(Math.min(set.expectedGap, Math.max(keepClear, set.expectedGap - allowed))),
    most: mm(set.expectedGap + allowed),
    below: 'Below that the packing sits low: one more ring may fit, or it is pressed harder than expected.',
    above:
      'Above that the rings stand too high: not seated, or one too many ' +
      `(on the last one, loose, the nose should enter ${millimetres(set.entryOnLastRing)}).`,
  }
}

const noTravel = {
  'ring-set/nose-does-not-reach': 'by these figures the nose does not reach the loaded packing: measure again, and ask',
  'ring-set/no-reserve': 'by these figures no travel is left once it is loaded: ask before this set goes in',
} as const

type Load = CutCard['load']

function loadOf({ gland, pressure, family, rules }: ToLoad, refused: Refused): Load {
  const { boxBore, stemDiameter, studThread, studCount, studGrade, lubrication } = gland
  const found = studThread === null ? null : findThread(studThread)
  if (boxBore === null || stemDiameter === null || studThread === null || studCount === null) return null
  if (pressure === null || family === null || !found?.ok) return null
  const leastStress = family.figures.stressFloor.value
  const required = requiredStress({ systemPressure: pressure, pressureFactor: rules.stressFactor, leastStress })
  if (!required.ok) return nothing(required, refused)
  const { requiredStress: stress, setBy } = required
  const loaded = glandLoad({ boxBore, stemDiameter, packingStress: stress, studCount })
  if (!loaded.ok) return nothing(loaded, refused)
  const { glandLoad: force, loadPerStud } = loaded
  const strength = strengthOf({ designation: studThread, grade: studGrade, loadPerStud, utilisationLimit: rules.proofWarning })
  if (strength.standing === 'refused') return nothing(refuse('stud/beyond-strength', 'torque, N·m', strength.says), refused)
  // The nut factor is an average: at the same torque smooth nuts press harder, and that is what the studs must bear.
  const { low, usual } = usualNutFactors[lubrication]
  const hardest = strengthOf({
    designation: studThread,
    grade: studGrade,
    loadPerStud: newtons((loadPerStud * usual) / low),
    utilisationLimit: rules.proofWarning,
  })
  const nutFactor = rules[nutFactorKeys[lubrication]]
  const each = nutTorque({ glandLoad: force, studCount, studDiameter: found.thread.nominalDiameter, nutFactor })
  if (!each.ok) return nothing(each, refused)
  const reason = setBy === 'pressure' ? 'set by the pressure' : 'the least that seats this packing'
  return {
    stress,
    force,
    torque: each.torque,
    says: [
      `Gland stress ${formatFigure(stress, 'MPa', 1)}, ${reason}; load ${formatFigure(force / 1000, 'kN', 1)} on ${studCount} studs.`,
      `Nut factor ${nutFactor} for nuts ${lubricated[lubrication]}, an average: ` +
        `smoother nuts press ${Math.round((usual / low - 1) * 100)} % harder. The gap has the last word.`,
      ...(strength.standing === 'borne' ? [strength.says] : []),
    ],
    warning: warningOf(strength, hardest),
  }
}

function warningOf(usual: StudStrength, hardest: StudStrength): string | null {
  if (usual.standing !== 'borne') return usual.says
  return hardest.standing === 'refused' ? 'Stop early: with smoother nuts this torque would stretch the studs.' : null
}

function nothing(outcome: Outcome<object>, refused: Refused): null {
  refused(outcome)
  return null
}

const lubricated = { dry: 'left dry', oiled: 'oiled', paste: 'with paste', unknown: 'of unknown lubrication' } as const
const nutFactorKeys = {
  dry: 'nutFactorDry',
  oiled: 'nutFactorOiled',
  paste: 'nutFactorPaste',
  unknown: 'nutFactorUnknown',
} as const

function stepsOf(
  load: Load,
  { firstTorqueStep, secondTorqueStep, jointStagger: stagger }: SettingValues,
  refused: Refused,
): CutCard['steps'] {
  const byHand = {
    torque: null,
    says: `each ring pressed home by itself with the follower or a split bush, its joint turned ${stagger}°; never the loose set at once`,
  }
  if (load === null) return [byHand]
  const found = torqueSteps(load.torque, [firstTorqueStep, secondTorqueStep, ratio(1)])
  if (!found.ok) {
    refused(found)
    return [byHand]
  }
  const last = found.steps.length - 1
  const step = (torque: NewtonMetre, index: number) => {
    if (index === last) return { torque, says: 'read both gaps and write them down' }
    return {
      torque,
      says: index === 0 ? 'stem through its travel twice' : `stem again; gaps equal within ${millimetres(reserveRules.tilt, 2)}`,
    }
  }
  return [
    byHand,
    ...found.steps.map(({ torque }, index) => step(torque, index)),
    { torque: load.torque, says: 'again to the last torque after 3 to 5 strokes of the stem: a set settles' },
  ]
}
