import { showBoard, showBoardSummary, type BoardRow } from '@glandkeeper/contract/board'
import { keepPreviousData, queryOptions, useQueries, useQuery } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import type { BoardView } from './board-view.ts'
import { WINDOW_ROWS, windowOf, windowsFor } from './board-windows.ts'

/** One window of rows. The signal matters: windows scrolled past before they arrive are not waited for. */
const boardWindow = (view: BoardView, offset: number) =>
  queryOptions({
    queryKey: ['board', 'rows', view, offset],
    queryFn: ({ signal }) => call(showBoard, { query: { ...view, offset: String(offset), limit: String(WINDOW_ROWS) }, signal }),
  })

export const boardSummary = queryOptions({
  queryKey: ['board', 'summary'],
  queryFn: ({ signal }) => call(showBoardSummary, { signal }),
})

/** The first window says how many rows there are; the last view stays until the next one arrives. */
export function useBoardTop(view: BoardView) {
  return useQuery({ ...boardWindow(view, 0), placeholderData: keepPreviousData })
}

/** Rows by their place on the board; undefined where the window has not arrived. */
export function useBoardRows(view: BoardView, shown: { first: number; last: number }, top: { total: number; rows: BoardRow[] }) {
  const offsets = windowsFor(shown.first, shown.last, top.total).filter((offset) => offset > 0)
  const windows = useQueries({ queries: offsets.map((offset) => boardWindow(view, offset)) })
  const failed = windows.find((window) => window.isError)
  return {
    rowAt: (place: number): BoardRow | undefined => {
      const offset = windowOf(place)
      const rows = offset === 0 ? top.rows : windows[offsets.indexOf(offset)]?.data?.rows
      return rows?.[place - offset]
    },
    failed,
  }
}
