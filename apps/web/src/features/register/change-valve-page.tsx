import type { Area } from '@glandkeeper/contract/areas'
import type { Valve } from '@glandkeeper/contract/valves'
import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Link, useNavigate, useParams } from 'react-router'
import { ProblemError } from '../../platform/client.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { ForRegisterKeepers } from '../people/index.tsx'
import { siteAreas, useChangeValve, valveToChange } from './queries.ts'
import { RetireValve } from './retire-valve.tsx'
import { draftOf, rebase } from './valve-draft.ts'
import { valveFields } from './valve-fields.ts'
import { ValveForm } from './valve-form.tsx'

export function ChangeValvePage() {
  const { tag = '' } = useParams()
  return (
    <ForRegisterKeepers>
      <main className={page.page}>
        <title>{`Change ${tag} · Glandkeeper`}</title>
        <div className={page.title}>
          <h1>Change {tag}</h1>
          <Link to={`/valves/${encodeURIComponent(tag)}`}>Back to the valve</Link>
        </div>
        <KnownValve key={tag} tag={tag} />
      </main>
    </ForRegisterKeepers>
  )
}

function KnownValve({ tag }: { tag: string }) {
  const known = useQuery(valveToChange(tag))
  const places = useQuery(siteAreas)
  const error = known.error ?? places.error
  if (known.data && places.data) return <Change valve={known.data.valve} areas={places.data.areas} />
  return error ? <ProblemNote error={error} /> : <p role="status">Reading the valve</p>
}

function Change({ valve, areas }: { valve: Valve; areas: readonly Area[] }) {
  const [from, setFrom] = useState(valve)
  const [draft, setDraft] = useState(() => draftOf(valve))
  const [changedThere, setChangedThere] = useState<string[]>([])
  const change = useChangeValve(valve.tag)
  const queries = useQueryClient()
  const navigate = useNavigate()

  const takeOver = async () => {
    const { valve: newer } = await queries.fetchQuery(valveToChange(valve.tag))
    const rebased = rebase(draftOf(from), draft, draftOf(newer))
    setFrom(newer)
    setDraft(rebased.draft)
    setChangedThere(rebased.changedThere)
    change.reset()
  }
  const isOvertaken = change.error instanceof ProblemError && change.error.problem.code === 'valve/changed-meanwhile'
  return (
    <>
      <ValveForm
        draft={draft}
        onChange={setDraft}
        areas={areas}
        saveWords="Save the change"
        isSaving={change.isPending}
        error={change.error}
        onSave={(input) =>
          change.mutate(
            { revision: from.revision, valve: input },
            { onSuccess: ({ tag }) => void navigate(`/valves/${encodeURIComponent(tag)}`) },
          )
        }
        note={changedThere.length > 0 && <TakenOver pointers={changedThere} />}
        insteadOfSaving={
          isOvertaken ? (
            <button type="button" className="main" onClick={() => void takeOver()}>
              Load the newer valve and keep what I typed
            </button>
          ) : undefined
        }
      />
      {from.retiredAt === null && <RetireValve tag={valve.tag} revision={from.revision} />}
    </>
  )
}

function TakenOver({ pointers }: { pointers: readonly string[] }) {
  const labels = pointers.map((pointer) => valveFields.get(pointer)?.label)
  return <p role="status">The newer valve is loaded. Changed by somebody else: {labels.join(', ')}. Look at these, then save.</p>
}
