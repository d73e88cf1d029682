/** The only source of the present time. Tests pass their own. */
export type Clock = () => Date

export const systemClock: Clock = () => new Date()
