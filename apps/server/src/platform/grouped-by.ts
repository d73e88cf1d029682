/**
 * Things by a key, keys in the order met; what has no key is left out.
 *
 * @example [...groupedBy([1, 2, 3], (n) => (n === 2 ? null : n % 2)).keys()] // → [1]
 */
export function groupedBy<Thing, Key extends string | number>(
  things: readonly Thing[],
  keyOf: (thing: Thing) => Key | null,
): Map<Key, Thing[]> {
  const groups = new Map<Key, Thing[]>()
  for (const thing of things) {
    const key = keyOf(thing)
    if (key === null) continue
    const group = groups.get(key)
    if (group) group.push(thing)
    else groups.set(key, [thing])
  }
  return groups
}
