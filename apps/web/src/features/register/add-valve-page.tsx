import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link, useNavigate, useSearchParams } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { ForRegisterKeepers } from '../people/index.tsx'
import { siteAreas, useAddValve } from './queries.ts'
import { newDraft, type ValveDraft } from './valve-draft.ts'
import { ValveForm } from './valve-form.tsx'

export function AddValvePage() {
  return (
    <ForRegisterKeepers>
      <main className={page.page}>
        <title>Add a valve · Glandkeeper</title>
        <h1>Add a valve</h1>
        <NewValve />
      </main>
    </ForRegisterKeepers>
  )
}

function NewValve() {
  const [address] = useSearchParams()
  const known = useQuery(siteAreas)
  const add = useAddValve()
  const navigate = useNavigate()
  const [draft, setDraft] = useState<ValveDraft>({ ...newDraft, '/areaCode': address.get('area') ?? '' })
  if (known.data === undefined) {
    return known.error ? (
      <ProblemNote error={known.error} again={{ words: 'Read the areas again', onPress: () => void known.refetch() }} />
    ) : (
      <p role="status">Reading the areas</p>
    )
  }
  if (known.data.areas.length === 0) {
    return (
      <Empty title="A valve stands in an area, and there is none yet">
        <p>
          <Link to="/register">Add the first area</Link>, then come back.
        </p>
      </Empty>
    )
  }
  return (
    <ValveForm
      draft={draft}
      onChange={setDraft}
      areas={known.data.areas}
      saveWords="Add the valve"
      isSaving={add.isPending}
      error={add.error}
      onSave={(valve) => add.mutate(valve, { onSuccess: ({ tag }) => void navigate(`/valves/${encodeURIComponent(tag)}`) })}
    />
  )
}
