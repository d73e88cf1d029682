import { useState, type SubmitEvent } from 'react'
import { useNavigate } from 'react-router'
import { TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useRetireValve } from './queries.ts'
import css from './register-page.module.css'

/** Asks for a reason, which is also the second thought: there is no way back from here. */
export function RetireValve({ tag, revision }: { tag: string; revision: number }) {
  const [reason, setReason] = useState('')
  const retire = useRetireValve(tag)
  const navigate = useNavigate()
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    retire.mutate({ revision, reason }, { onSuccess: () => void navigate('/') })
  }
  return (
    <section className={css.retire}>
      <h2>Retire this valve</h2>
      <p>A retired valve leaves the board and the rounds. Its history stays.</p>
      <form onSubmit={submit} className={css.line}>
        <TextInput
          label="Why it is retired"
          value={reason}
          onChange={setReason}
          maxLength={200}
          hint="removed with line 2, replaced by BM-3310"
        />
        <button type="submit" disabled={reason.trim() === '' || retire.isPending}>
          Retire {tag}
        </button>
      </form>
      {retire.error && <ProblemNote error={retire.error} />}
    </section>
  )
}
