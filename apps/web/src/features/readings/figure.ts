/** A figure as it is typed at a valve: a comma is a point. Empty is not said (null); what is no figure is NaN, and is refused later in words. */
export function figureOf(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-')
  if (plain === '') return null
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN
}

/** Millimetres keep their one decimal, as a steel rule is read; counts and turns show what they have. */
export function figureAsTyped(value: number | null, decimals: number): string {
  if (value === null || Number.isNaN(value)) return ''
  return decimals === 1 ? value.toFixed(1) : String(Number(value.toFixed(decimals)))
}

/** One step from what is shown, without the dust of binary fractions. */
export function stepped(from: number | null, step: number, least: number): number {
  const start = from === null || Number.isNaN(from) ? 0 : from
  return Math.max(Number((start + step).toFixed(4)), least)
}
