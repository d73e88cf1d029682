import type { Standing } from '@glandkeeper/contract/reserve'
import type { Valve } from '@glandkeeper/contract/valves'
import { formatDay } from '../../platform/site-time.ts'
import { StandingMark } from '../../ui/standing.tsx'
import look from './valve-page.module.css'

const NO_BREAK_SPACE = '\u00a0'

export function ValveTitle({ valve, standing }: { valve: Valve; standing: Standing }) {
  return (
    <header className={look.title}>
      <h1>{valve.tag}</h1>
      <span className={look.description}>{valve.description}</span>
      <span className="soft">
        {[serviceInWords(valve), valve.areaName].join(' · ')}
        {valve.retiredAt !== null && ` · retired ${formatDay(valve.retiredAt)}`}
      </span>
      <span className={look.standing}>
        <StandingMark standing={standing} />
      </span>
    </header>
  )
}

/** @example serviceInWords(valve) // → 'condensate, 118 °C, 3 bar' */
function serviceInWords({ fluid, phase, temperature, pressure }: Valve): string {
  return [
    fluid || phase,
    temperature === null ? 'temperature not recorded' : `${temperature}${NO_BREAK_SPACE}°C`,
    pressure === null ? 'pressure not recorded' : `${pressure}${NO_BREAK_SPACE}bar`,
  ].join(', ')
}
