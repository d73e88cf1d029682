interface InArea<Look> {
  readonly areaCode: string
  readonly looks: readonly Look[]
}

/** Areas in the order they are walked, each with its stops in theirs. */
export function byArea<Look extends { readonly areaCode: string }>(looks: readonly Look[]): InArea<Look>[] {
  const areas = new Map<string, Look[]>()
  for (const look of looks) areas.set(look.areaCode, [...(areas.get(look.areaCode) ?? []), look])
  return [...areas].map(([areaCode, own]) => ({ areaCode, looks: own }))
}
