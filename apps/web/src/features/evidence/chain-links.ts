import { type DrawnLink, LINK } from './chain-geometry.ts'
import css from './evidence.module.css'

/** Height of the chain's middle, and half the height of a link seen from its side. */
export const MIDDLE = 32
export const HALF = 7
const TOP = MIDDLE - HALF
const BOTTOM = MIDDLE + HALF

/** A link from its side is an oval, from its edge a bar; a broken one is torn in the middle. */
export function pathOfLink({ x, isEdge, isBroken }: DrawnLink): string {
  const right = x + LINK
  const [from, to] = [x + HALF, right - HALF]
  if (isBroken) {
    const middle = x + LINK / 2
    const halves = isEdge
      ? `M${x} ${MIDDLE}H${middle - 4}M${middle + 4} ${MIDDLE}H${right}`
      : `M${from} ${TOP}A${HALF} ${HALF} 0 0 0 ${from} ${BOTTOM}M${to} ${TOP}A${HALF} ${HALF} 0 0 1 ${to} ${BOTTOM}`
    return `${halves}M${middle - 2} ${TOP - 3}L${middle + 2} ${MIDDLE - 2}L${middle - 2} ${MIDDLE + 2}L${middle + 2} ${BOTTOM + 3}`
  }
  if (isEdge) return `M${x} ${MIDDLE}H${right}`
  return `M${from} ${TOP}H${to}A${HALF} ${HALF} 0 0 1 ${to} ${BOTTOM}H${from}A${HALF} ${HALF} 0 0 1 ${from} ${TOP}Z`
}

export function classOfLink({ isProved, isBroken, isEdge }: DrawnLink): string {
  if (isBroken) return 'hotline'
  if (!isProved) return 'ghost'
  return isEdge ? `out ${css.edge}` : 'out'
}
