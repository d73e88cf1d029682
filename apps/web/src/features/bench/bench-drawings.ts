import { cutDrawings } from './cut-drawings.tsx'
import type { Draws } from './drawable.ts'
import { leakDrawings } from './leak-drawings.tsx'
import { loadDrawings } from './load-drawings.tsx'

/** The drawing beside an answer, to scale, where a person would rather look than read. */
export const benchDrawings: Draws = { ...cutDrawings, ...loadDrawings, ...leakDrawings }
