import { familyFigures, type FigureName, type SiteFamily } from '@glandkeeper/contract/packings'
import { quantities, type QuantityMeta } from '@glandkeeper/contract/quantity'
import { figureInWords } from '../settings/queries.ts'

interface TableColumn {
  readonly heading: string
  /** Two figures are a range. */
  readonly figures: readonly [FigureName, FigureName?]
}

export const tableColumns: readonly TableColumn[] = [
  { heading: 'Temperature', figures: ['lowestTemperature', 'highestTemperature'] },
  { heading: 'In steam, at most', figures: ['highestSteamTemperature'] },
  { heading: 'Pressure, at most', figures: ['highestPressure'] },
  { heading: 'pH', figures: ['lowestPh', 'highestPh'] },
  { heading: 'Consolidation', figures: ['consolidation'] },
  { heading: 'Friction', figures: ['friction'] },
  { heading: 'Lateral ratio', figures: ['lateralRatio'] },
  { heading: 'Least gland stress', figures: ['stressFloor'] },
  { heading: 'Usual life', figures: ['usualLife'] },
]

/** What is known of a figure besides its value. */
export function metaOf(figure: FigureName): QuantityMeta {
  const meta = quantities.get(familyFigures[figure])
  if (!meta) throw new Error(`${figure} is no quantity`)
  return meta
}

/** @example rangeInWords(ptfe, ['lowestTemperature', 'highestTemperature']) // → '−200 to 260 °C' */
export function rangeInWords(family: Pick<SiteFamily, 'figures'>, [low, high]: TableColumn['figures']): string {
  const said = (figure: FigureName) => figureInWords(family.figures[figure].value, metaOf(figure).unit)
  if (high === undefined) return said(low)
  const bare = figureInWords(family.figures[low].value, 'ratio')
  return metaOf(low).unit === 'pH'
    ? `${bare} to ${figureInWords(family.figures[high].value, 'ratio')}`
    : `${bare} to ${said(high)}`
}
