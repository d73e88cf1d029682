import { quantity } from '@glandkeeper/contract/quantity'

/** The hole a leak comes through, as a round one that would pass as much. */
export const opening = quantity({ label: 'Opening, across', unit: 'mm', min: 0.01, max: 100, step: 0.01, usual: [0.1, 6] })
