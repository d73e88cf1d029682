import type { Valve } from '@glandkeeper/contract/valves'

/** Bare metal burns skin on a short touch from about here, in °C. */
const BURNS_FROM = 60
const NO_BREAK_SPACE = '\u00a0'

/** What is behind this gland, and what never to do because of it. An unknown service is taken for a dangerous one. */
export function cautionFor({ temperature, pressure, phase }: Pick<Valve, 'temperature' | 'pressure' | 'phase'>): string {
  const isHot = temperature !== null && temperature >= BURNS_FROM
  const isPressurised = pressure !== null && pressure > 0
  const what = [
    isHot && `Hot, ${temperature}${NO_BREAK_SPACE}°C.`,
    isPressurised &&
      `Under pressure, ${pressure}${NO_BREAK_SPACE}bar${phase === 'steam' || phase === 'gas' ? ` of ${phase}` : ''}.`,
    temperature === null && pressure === null && 'Temperature and pressure not recorded: take it for hot and under pressure.',
    temperature === null && pressure !== null && 'Temperature not recorded: take it for hot.',
    temperature !== null && pressure === null && 'Pressure not recorded: take it for under pressure.',
  ]
  return [
    ...what.filter((line) => line !== false),
    'Stay out of the stem line; never loosen under pressure. Site procedure and permit decide.',
  ].join(' ')
}
