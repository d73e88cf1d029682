import { v5, v7 } from 'uuid'

/** A new id; ids made later sort later, which keeps indexes compact. */
export function newId(): string {
  return v7()
}

const FACT_NAMESPACE = '6f0c8a3e-52b1-4f0e-9b43-3a9d1c7e5f10'

/**
 * The same parts always give the same id: a row imported twice is one entry.
 * Parts are separated by a character that no field of a file can hold.
 */
export function idOfParts(parts: readonly string[]): string {
  return v5(parts.join('\u001f'), FACT_NAMESPACE)
}
