import { quantity } from '@glandkeeper/contract/quantity'
import { hoursPerYear } from '@glandkeeper/engines/leak/leak-quantity'

/** A leak that nobody mends runs day and night; a line that is shut down leaks less. */
export const hoursAYear = quantity({ label: 'Hours a year', unit: 'h/y', min: 1, max: 8784, step: 1 }).default(hoursPerYear(8760))
