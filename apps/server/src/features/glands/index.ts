export { entriesAsTheyStand, type Said, type StandingEntry } from './entries-as-they-stand.ts'
export { correctionFindings, eventFindings, findingsInWords, storeFinding } from './findings-in-words.ts'
export { entryInWords } from './entry-in-words.ts'
export { type FitBody, type ForecastBasis, forecastBasis, groupOf, priorOf, stopAfter } from './forecast-basis.ts'
export { expectedNow, forecastMade, surpriseFindings } from './forecast-made.ts'
export { dayOfChance } from './forecast-in-words.ts'
export { FORECAST_CHANCES, type KeptForecast, type KeptLook } from './forecast-of-gland.ts'
export { howFactsStand, howRowsStand } from './facts-of-rows.ts'
export { leakRows, leaksOfGland } from './kept-leaks.ts'
export { rebuildStates, VALVES_OF_A_PORTION } from './rebuild-states.ts'
export { netScreening } from './net-screening.ts'
export { glandForEngines, glandOfRow } from './gland-of-row.ts'
export {
  type AsOf,
  bandsOf,
  columnsOfStanding,
  type GlandStands,
  glandStands,
  presentState,
  standingOfRow,
} from './present-state.ts'
export { glandCourse, glandRecord, rebuildState, statesThatDiffer, writeEmptyStates } from './state.ts'
