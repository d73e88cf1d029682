import type { BoardRow } from '@glandkeeper/contract/board'
import { useWindowVirtualizer } from '@tanstack/react-virtual'
import { useLayoutEffect, useRef, useState } from 'react'
import type { BoardView } from './board-view.ts'
import { useBoardRows } from './queries.ts'

const ROWS_BEYOND_SIGHT = 12

export interface RowsProps {
  view: BoardView
  top: { total: number; rows: BoardRow[] }
}

/** The rows the window shows now, of a list of any length, and the empty space that stands for all others. */
export function useRowsInSight<Holder extends HTMLElement>({ view, top }: RowsProps, rowHeight: number) {
  const holder = useRef<Holder>(null)
  const [scrollMargin, setScrollMargin] = useState(0)
  // What stands above the list comes and goes with its own answers, and moves the list with it.
  useLayoutEffect(() => {
    const measure = () => setScrollMargin(holder.current ? Math.round(holder.current.getBoundingClientRect().top + scrollY) : 0)
    measure()
    const watched = new ResizeObserver(measure)
    watched.observe(document.body)
    return () => watched.disconnect()
  }, [])
  const virtual = useWindowVirtualizer({
    count: top.total,
    estimateSize: () => rowHeight,
    overscan: ROWS_BEYOND_SIGHT,
    scrollMargin,
  })
  const items = virtual.getVirtualItems()
  const first = items.at(0)?.index ?? 0
  const last = items.at(-1)?.index ?? -1
  const { rowAt, failed } = useBoardRows(view, { first, last }, top)
  return {
    holder,
    places: items.map(({ index }) => index),
    rowAt,
    failed,
    spaceAbove: first * rowHeight,
    spaceBelow: (top.total - 1 - last) * rowHeight,
  }
}
