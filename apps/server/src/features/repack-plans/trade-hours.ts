import type { TradeHours } from '@glandkeeper/contract/outages'

interface HoursColumns {
  readonly fittingHours: number | null
  readonly scaffoldingHours: number | null
  readonly isolatingHours: number | null
}

/** Hours by trade, from the columns that keep them; a sum over no row is none. */
export function tradeHours({ fittingHours, scaffoldingHours, isolatingHours }: HoursColumns): TradeHours {
  return { fitting: fittingHours ?? 0, scaffolding: scaffoldingHours ?? 0, isolating: isolatingHours ?? 0 } as TradeHours
}

/** The columns that keep hours by trade. */
export function hoursColumns({ fitting, scaffolding, isolating }: TradeHours) {
  return { fittingHours: fitting, scaffoldingHours: scaffolding, isolatingHours: isolating }
}
