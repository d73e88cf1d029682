import { FieldEvent } from '@glandkeeper/contract/events'

/** What makes an entry this one and no other is not for changing. */
const fixed = new Set([
  'id',
  'version',
  'kind',
  'valveId',
  'device',
  'corrects',
  'replacement',
  'photos',
  // Yes or no is not for typing: what was ticked stays ticked.
  'proved',
  'jointsStaggered',
  'loadedInSteps',
  'isPegged',
  // Nor are lists: what was found and taken stays as it was said.
  'found',
  'fromStore',
  'doneBy',
])

/** The fields of an entry that a person may change, as text. */
export function fieldsOf(event: FieldEvent): Record<string, string> {
  return Object.fromEntries(
    Object.entries(event)
      .filter(([field]) => !fixed.has(field))
      .map(([field, value]) => [field, String(value)]),
  )
}

/** The entry with the texts in the place of its fields, or why that is none. An emptied field is left out. */
export function eventWith(
  event: FieldEvent,
  texts: Readonly<Record<string, string>>,
): { readonly ok: true; readonly event: FieldEvent } | { readonly ok: false; readonly faults: readonly string[] } {
  const values: Record<string, unknown> = { ...event }
  for (const [field, text] of Object.entries(texts)) {
    const wasFigure = typeof values[field] === 'number'
    if (text.trim() === '') delete values[field]
    else values[field] = wasFigure ? Number(text.replace(',', '.')) : text.trim()
  }
  const parsed = FieldEvent.safeParse(values)
  return parsed.success
    ? { ok: true, event: parsed.data }
    : { ok: false, faults: parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`) }
}
