import { z } from 'zod'

export const roles = ['planner', 'fitter', 'engineer'] as const
export const Role = z.enum(roles)
export type Role = z.infer<typeof Role>

/** Everybody of the site who is signed in. */
export const everybody = roles
/** Those who keep the register: a fitter reports facts and does not change what a valve is. */
export const registerKeepers = ['planner', 'engineer'] as const
