import { findThread } from '@glandkeeper/engines/threads/stud-threads'
import type { GlandStands } from '../glands/index.ts'

/** The sentence of a row on the board, where reserve, date and standing have columns of their own. */
export function whyInRow(
  {
    withoutForecast,
    reserve,
    findings,
    gapIsInferred,
  }: Pick<GlandStands, 'withoutForecast' | 'reserve' | 'findings' | 'gapIsInferred'>,
  studThread: string | null,
): string {
  if (withoutForecast !== null || reserve === null) return withoutForecast ?? ''
  const further = findings[0]?.detail ?? (gapIsInferred ? 'worked out from turns, measure' : null)
  return [turnsLeft(reserve, studThread), further].filter((part) => part !== null).join('; ')
}

/** In the fitter's measure, rounded down to the half turn. */
function turnsLeft(reserve: number, studThread: string | null): string {
  const found = studThread === null ? null : findThread(studThread)
  if (!found?.ok) return 'stud thread not known'
  const halves = Math.floor((2 * reserve) / found.thread.pitch + 1e-9)
  if (halves === 0) return 'less than half a turn left'
  if (halves === 1) return 'half a turn left'
  return halves === 2 ? 'one turn left' : `${halves / 2} turns left`
}
