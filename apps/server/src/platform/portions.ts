/** Rows as a thread hands them over and a transaction takes them. */
export type Portion<Row> = string & { readonly rows?: readonly Row[] }

/** So many rows are one transaction: short enough that no page waits for it beside its own work. */
const ROWS = 200

/**
 * Each portion is a string: those go over from a thread at once, and each is read when it is written. A hundred
 * thousand rows as objects would hold up every request for a third of a second.
 */
export function inPortions<Row>(rows: readonly Row[], size = ROWS): Portion<Row>[] {
  return Array.from({ length: Math.ceil(rows.length / size) }, (_, index) =>
    JSON.stringify(rows.slice(index * size, (index + 1) * size)),
  )
}

export function rowsIn<Row>(portion: Portion<Row>): Row[] {
  return JSON.parse(portion) as Row[]
}
