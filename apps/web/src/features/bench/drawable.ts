import type { Calculator } from '@glandkeeper/bench/calculator'
import type { ReactNode } from 'react'
import type { z } from 'zod'

interface Drawable<C extends Calculator> {
  readonly given: z.output<C['input']>
  readonly answer: z.output<C['output']>
  /** Widest a drawing may be, in pixels. */
  readonly room: number
}

export type Draw = (drawable: { given: unknown; answer: unknown; room: number }) => ReactNode
export type Draws = Readonly<Record<string, Draw>>

/** Binds a drawing to its calculator, so that what it takes is what that calculator gives. */
export const draws = <C extends Calculator>(_name: C['name'], draw: (drawable: Drawable<C>) => ReactNode) => draw as Draw
