/** Hours are mostly whole, halves, quarters or tenths. */
const USUAL_STEPS = [1, 0.5, 0.25, 0.1, 0.05]
const OFF_BY = 1e-9

/** The largest usual step that all amounts are a multiple of; null where there is none. */
export function commonStep(amounts: Iterable<number>): number | null {
  const all = [...new Set(amounts)]
  const isWhole = (amount: number, step: number) => Math.abs(amount / step - Math.round(amount / step)) < OFF_BY
  return USUAL_STEPS.find((step) => all.every((amount) => isWhole(amount, step))) ?? null
}

/** How many whole steps go into an amount. */
export function stepsIn(amount: number, step: number): number {
  return Math.floor(amount / step + OFF_BY)
}
