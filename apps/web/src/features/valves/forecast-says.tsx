import type { ReserveForecast } from '@glandkeeper/contract/reserve'
import { counted } from '../../ui/count.ts'
import { asSentence } from '../../ui/sentence.ts'

/** What a reader of the fan should know: what it leans on, and what was left out of it. */
export function ForecastSays({ forecast }: { forecast: ReserveForecast }) {
  return <p className="soft">{[...forecast.says.map(asSentence), leansOn(forecast)].join(' ')}</p>
}

/** @example leansOn(forecast) // → 'Leans on 12 readings, 2 earlier packings and like valves: steam · graphite braid, fitted to the group.' */
export function leansOn({ readingsUsed, earlierLivesUsed, group, origin }: ReserveForecast): string {
  const own = [
    readingsUsed > 0 && counted(readingsUsed, 'reading'),
    earlierLivesUsed > 0 && counted(earlierLivesUsed, 'earlier packing'),
  ].filter((part) => part !== false)
  const alike = origin === 'set by us' ? `values set by us for ${group}` : `like valves: ${group}, ${origin}`
  return `Leans on ${own.length === 0 ? alike : `${own.join(', ')} and ${alike}`}.`
}
