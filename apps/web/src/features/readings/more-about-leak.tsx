import { type DraftFieldsProps, measuredLeak } from './draft.ts'
import look from './pad.module.css'
import { SightingFields } from './sighting-fields.tsx'
import { moreInWords } from './sighting-words.ts'

/** For a leak that is measured, or looked at closely. Folded away: most looks are a word. */
export function MoreAboutLeak({ draft, onChange }: DraftFieldsProps) {
  return (
    <details className={look.aside}>
      <summary>{moreInWords(draft, measuredLeak(draft))}</summary>
      <SightingFields draft={draft} onChange={onChange} />
    </details>
  )
}
