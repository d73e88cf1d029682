import type { Quantity } from '@glandkeeper/units/quantity'
import { z } from 'zod'

/**
 * What is known of a number besides its value. Outside `min..max` it is refused as impossible;
 * outside `usual` it is possible but asked about again and shown with a finding.
 */
export interface QuantityMeta {
  readonly label: string
  readonly unit: string
  readonly min: number
  readonly max: number
  readonly step: number
  readonly usual?: readonly [number, number]
}

/** Every number of the contract is listed here; forms, CSV headings and tests read it. */
export const quantities = z.registry<QuantityMeta>()

/**
 * A number with a unit, a possible range and a usual range.
 *
 * @example quantity({ label: 'Gap', unit: 'mm', min: 0, max: 200, step: 0.1 }).parse(7.4) // → 7.4
 */
export function quantity<const Unit extends string>(meta: QuantityMeta & { unit: Unit }) {
  const range = z
    .number({ error: `${meta.label}: must be a number` })
    .min(meta.min, `${meta.label}: at least ${meta.min} ${meta.unit}`)
    .max(meta.max, `${meta.label}: at most ${meta.max} ${meta.unit}`)
    .meta({ title: meta.label, unit: meta.unit })
  // A cast, not a transform: JSON Schema cannot describe a transform.
  const branded = range as unknown as z.ZodType<Quantity<Unit>, number>
  quantities.add(branded, meta)
  return branded
}

/** A whole number of things. */
export function count(label: string, min: number, max: number, usual?: readonly [number, number]) {
  const meta: QuantityMeta = { label, unit: '', min, max, step: 1, ...(usual && { usual }) }
  const whole = z
    .int({ error: `${label}: must be a whole number` })
    .min(min, `${label}: at least ${min}`)
    .max(max, `${label}: at most ${max}`)
    .meta({ title: label })
  quantities.add(whole, meta)
  return whole
}

/** A whole number that arrives as text, as in the query part of an address. */
export function countFromText(label: string, min: number, max: number) {
  return z
    .string()
    .regex(/^\d{1,9}$/, `${label}: must be a whole number`)
    .transform(Number)
    .pipe(count(label, min, max))
}

/** The schema inside `.optional()`, `.nullable()` and `.default()`, where the registry entry sits. */
export function innermost(schema: z.core.$ZodType): z.core.$ZodType {
  let inner = schema
  while (inner instanceof z.ZodOptional || inner instanceof z.ZodNullable || inner instanceof z.ZodDefault) {
    inner = inner.unwrap()
  }
  return inner
}

export interface Unusual {
  readonly field: string
  readonly value: number
  readonly meta: QuantityMeta
}

/** The fields of `value` that are possible but outside their usual range. */
export function unusualQuantities(schema: z.ZodObject, value: Readonly<Record<string, unknown>>): Unusual[] {
  return Object.entries(schema.shape as Readonly<Record<string, z.core.$ZodType>>).flatMap(([field, fieldSchema]) => {
    const meta = quantities.get(innermost(fieldSchema))
    const given = value[field]
    if (!meta?.usual || typeof given !== 'number') return []
    const [low, high] = meta.usual
    return given < low || given > high ? [{ field, value: given, meta }] : []
  })
}
