import { studUtilisation } from '@glandkeeper/engines/load/stud-strength'

type Stud = Parameters<typeof studUtilisation>[0]

/** How the studs stand to a load: borne, to be warned of, or not to be put on them at all. */
export interface StudStrength {
  readonly standing: 'borne' | 'warned' | 'refused'
  readonly says: string
}

const WEAKEST = '4.6'
const STRONGEST = '12.9'

/** A torque that would stretch the studs is not printed at all. */
export function strengthOf(stud: Stud): StudStrength {
  const used = studUtilisation(stud)
  if (!used.ok) return ofUnknownGrade(stud)
  const share = `${percent(used.utilisation)} of the strength of studs of grade ${stud.grade}`
  if (used.standing === 'within limit') return { standing: 'borne', says: `That is ${share}.` }
  if (used.standing === 'beyond strength')
    return { standing: 'refused', says: `this packing wants ${share}: no torque is given, ask the engineer` }
  const limit = `above the limit of ${percent(stud.utilisationLimit)}`
  return { standing: 'warned', says: `Stop: that is ${share}, ${limit}. Ask the engineer before loading.` }
}

/** Between the weakest and the strongest grade there is. */
function ofUnknownGrade(stud: Stud): StudStrength {
  const weakest = studUtilisation({ ...stud, grade: WEAKEST })
  const strongest = studUtilisation({ ...stud, grade: STRONGEST })
  if (!weakest.ok || !strongest.ok)
    return { standing: 'refused', says: 'the strength of these studs cannot be worked out: no torque is given' }
  if (strongest.utilisation > 1)
    return {
      standing: 'refused',
      says: `not even studs of grade ${STRONGEST} bear this load: no torque is given, ask the engineer`,
    }
  if (weakest.utilisation > 1)
    return {
      standing: 'refused',
      says: `the grade of the studs is not known, and studs of grade ${WEAKEST} would not bear this load: read the mark first, no torque is given`,
    }
  return {
    standing: 'warned',
    says: `Stop: the grade of the studs is not known; were it ${WEAKEST}, this is ${percent(weakest.utilisation)} of their strength. Read the mark.`,
  }
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}
