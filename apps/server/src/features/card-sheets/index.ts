/** The cut card on paper. It loads no route, so that threads that print load none either. */
export { cardUnderTitle, printedCard } from './print.ts'
export { cautionBlocks } from './cautions.ts'
