import type { SiteFamily } from '@glandkeeper/contract/packings'
import { useMutation } from '@tanstack/react-query'
import { useState, type SubmitEvent } from 'react'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { AboutFields } from './about-fields.tsx'
import type { AboutDraft } from './family-draft.ts'
import css from './packings.module.css'
import { useChangeFamily } from './queries.ts'

/** Puts a family of the site's own in other words; its figures are changed one by one beside them. */
export function AboutForm({ family, onDone }: { family: SiteFamily; onDone: () => void }) {
  const { form, description, cautions, revision } = family
  const [draft, setDraft] = useState<AboutDraft>({ form, description, cautions })
  const change = useChangeFamily(family.name)
  const save = useMutation({ mutationFn: () => change({ revision, figures: {}, about: draft }), onSuccess: onDone })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.mutate()
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={`Change ${family.name}`}>
      <AboutFields draft={draft} onChange={setDraft} />
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          Save the family
        </button>
        <button type="button" onClick={onDone}>
          Leave it as it was
        </button>
      </div>
    </form>
  )
}
