import { z } from 'zod'

/** Of a crew; here, so that a phone that only walks rounds does not load what crews are. */
export const CrewId = z.uuid()

/** A Monday, as `2027-06-07`. */
export const WeekOf = z.iso
  .date()
  .refine((day) => new Date(`${day}T00:00:00Z`).getUTCDay() === 1, 'a week is named by its Monday')
