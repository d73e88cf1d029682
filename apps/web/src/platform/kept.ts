import type { z } from 'zod'

/** What this device keeps under a key; null where there is nothing, or nothing that can be read any more. */
export function kept<Schema extends z.ZodType>(key: string, schema: Schema): z.output<Schema> | null {
  try {
    return schema.safeParse(JSON.parse(localStorage.getItem(key) ?? 'null')).data ?? null
  } catch {
    return null
  }
}

/** Keeps a value, or with null forgets it. A device that keeps nothing must not stop the work: false says so. */
export function keep(key: string, value: unknown): boolean {
  try {
    if (value === null) localStorage.removeItem(key)
    else localStorage.setItem(key, JSON.stringify(value))
    return true
  } catch {
    return false
  }
}
