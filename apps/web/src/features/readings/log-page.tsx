import { useQuery } from '@tanstack/react-query'
import { useParams } from 'react-router'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import { valveQuery } from '../valves/queries.ts'
import { EntryForm } from './entry-form.tsx'
import { ValveBrief } from './valve-brief.tsx'
import look from './log-page.module.css'

/** For one thumb, standing at the valve: what it is, and one big button for what is done most. */
export function LogPage() {
  const { tag = '' } = useParams()
  const { timeZone } = useMe().site
  const valve = useQuery(valveQuery(tag))
  return (
    <main className={look.page}>
      <title>{`Log an entry · ${tag} · Glandkeeper`}</title>
      {valve.data ? (
        <>
          <div className={look.brief}>
            <ValveBrief history={valve.data} timeZone={timeZone} />
          </div>
          <EntryForm key={valve.data.valve.valveId} history={valve.data} />
        </>
      ) : (
        <div className={look.brief}>
          <h1>{tag}</h1>
          {valve.isError ? (
            <ProblemNote error={valve.error} again={{ words: 'Load it again', onPress: () => void valve.refetch() }} />
          ) : (
            <p className="soft" role="status">
              Looking the valve up
            </p>
          )}
        </div>
      )}
    </main>
  )
}
