import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { Valve } from '@glandkeeper/contract/valves'
import { cautionSentences } from '@glandkeeper/engines/packing/cautions'

/** Bare metal burns skin on a short touch from about here, in °C. Common practice, no source. */
const BURNS_FROM = 60
const NO_BREAK_SPACE = '\u00a0'

type Exposure = Pick<Valve, 'temperature' | 'pressure' | 'phase' | 'fluid' | 'access' | 'isolationBoundary'>

/** What is dangerous about this one valve. What nobody recorded is taken for dangerous. */
export function hazardsOf(valve: Exposure, family: SiteFamily | null): string[] {
  return [
    heat(valve.temperature),
    force(valve),
    ...where(valve),
    ...(family?.cautions.map((caution) => cautionSentences[caution]) ?? ['Packing not known: handle its dust as harmful.']),
  ].filter((line) => line !== null)
}

function heat(temperature: Valve['temperature']): string | null {
  if (temperature === null) return 'Temperature not recorded: take it for hot.'
  if (temperature < 0) return `Cold, ${temperature}${NO_BREAK_SPACE}°C: bare metal takes skin.`
  return temperature >= BURNS_FROM ? `Hot, ${temperature}${NO_BREAK_SPACE}°C: let it cool, or cover up.` : null
}

function force({ pressure, phase, fluid }: Exposure): string | null {
  const what = fluid.toLowerCase().includes(phase) || fluid === '' ? fluid || phase : `${fluid} (${phase})`
  if (pressure === null) return `Pressure not recorded: take ${what} for under pressure.`
  if (pressure < 0) return `Vacuum, ${pressure}${NO_BREAK_SPACE}bar of ${what}: it draws in.`
  return pressure > 0
    ? `Under pressure, ${pressure}${NO_BREAK_SPACE}bar of ${what}.`
    : `No pressure recorded above atmosphere: ${what}.`
}

function where({ access, isolationBoundary }: Exposure): string[] {
  return [
    ...(access === 'confined space' ? ['Confined space: entry needs its own permit.'] : []),
    ...(access === 'ladder' || access === 'scaffold' ? [`Reached by ${access}: tools and old packing must not fall.`] : []),
    ...(isolationBoundary === '' ? [] : [`To isolate, together: ${isolationBoundary}. Not isolated until it is proved.`]),
  ]
}

/** Said on every card, whatever the valve. */
export const cautions: readonly string[] = [
  'Isolate, lock, drain and vent, and prove zero before a nut is loosened.',
  'Loosen slowly and keep clear of the stem line: pressure can be trapped even then.',
  'Backseating is not isolation.',
  'Hot and hazardous service: protect hands, face and lungs as the permit says.',
  'Presume that old packing holds asbestos or lead until it is known not to.',
  'Nuts a quarter turn at a time, alternately and equally.',
  'A stiff stem after loading or a nip is a finding: write it down, and say so before the valve goes back.',
  'Site procedure, permit, local code and qualified persons decide.',
]

export const proof: readonly string[] = [
  'Stem through its whole travel, both ways: it moves freely.',
  'Let go of the wheel in mid-travel: it stops by itself and does not overrun.',
  'Both gaps read, equal, and inside the limits of the cut card.',
]
