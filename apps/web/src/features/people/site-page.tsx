import type { ListedPerson } from '@glandkeeper/contract/people'
import { useQuery } from '@tanstack/react-query'
import { format, parseISO } from 'date-fns'
import { useState } from 'react'
import { Link } from 'react-router'
import { atSite } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { ForRegisterKeepers, useMe } from './index.tsx'
import { inListOrder } from './person-draft.ts'
import { PersonForm } from './person-form.tsx'
import { people } from './queries.ts'
import { SiteForm } from './site-form.tsx'
import css from './site-page.module.css'

export function SitePage() {
  return (
    <ForRegisterKeepers>
      <main className={page.page}>
        <title>Site and people · Glandkeeper</title>
        <h1>Site and people</h1>
        <TheSite />
        <p>
          <Link to="/register/settings">Engineering settings of the site</Link>: what lengths, torques and leaks are worked out
          with.
        </p>
        <ThePeople />
      </main>
    </ForRegisterKeepers>
  )
}

function TheSite() {
  const { site } = useMe()
  const [isChanging, setIsChanging] = useState(false)
  return (
    <section className={css.section} aria-labelledby="the-site">
      <h2 id="the-site">Site</h2>
      {isChanging ? (
        <SiteForm site={site} onDone={() => setIsChanging(false)} />
      ) : (
        <>
          <dl className={css.facts}>
            <dt>Name</dt>
            <dd>{site.name}</dd>
            <dt>Time zone</dt>
            <dd>{site.timeZone}</dd>
            <dt>Next planned stop</dt>
            <dd>
              {site.nextStopOn === null
                ? 'none planned: the board counts from today'
                : format(parseISO(site.nextStopOn), 'd MMMM yyyy')}
            </dd>
          </dl>
          <button type="button" onClick={() => setIsChanging(true)}>
            Change the site
          </button>
        </>
      )}
    </section>
  )
}

function ThePeople() {
  const known = useQuery(people)
  const [isAdding, setIsAdding] = useState(false)
  return (
    <section className={css.section} aria-labelledby="the-people">
      <h2 id="the-people">People</h2>
      {isAdding ? (
        <PersonForm onDone={() => setIsAdding(false)} />
      ) : (
        <button type="button" onClick={() => setIsAdding(true)}>
          Add a person
        </button>
      )}
      {known.data ? (
        <PeopleTable listed={known.data.people} />
      ) : (
        <Waiting error={known.error} again={() => void known.refetch()} />
      )}
    </section>
  )
}

function Waiting({ error, again }: { error: unknown; again: () => void }) {
  return error ? (
    <ProblemNote error={error} again={{ words: 'Read the people again', onPress: again }} />
  ) : (
    <p role="status">Reading the people</p>
  )
}

function PeopleTable({ listed }: { listed: readonly ListedPerson[] }) {
  return (
    <table className={`${page.table} ${css.people}`}>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Sign-in name</th>
          <th scope="col">Role</th>
          <th scope="col">To change</th>
        </tr>
      </thead>
      <tbody>
        {inListOrder(listed).map((person) => (
          <PersonRow key={person.personId} person={person} />
        ))}
      </tbody>
    </table>
  )
}

function PersonRow({ person }: { person: ListedPerson }) {
  const [isChanging, setIsChanging] = useState(false)
  if (isChanging) {
    return (
      <tr>
        <td colSpan={4} className={css.open}>
          <PersonForm person={person} onDone={() => setIsChanging(false)} />
        </td>
      </tr>
    )
  }
  return (
    <tr>
      <th scope="row">{person.name}</th>
      <td className={css.signIn}>{person.signInName}</td>
      <td>
        {person.role}
        {person.leftAt !== null && <Left at={person.leftAt} />}
      </td>
      <td className={css.change}>
        <button type="button" className={css.quiet} onClick={() => setIsChanging(true)} aria-label={`Change ${person.name}`}>
          Change
        </button>
      </td>
    </tr>
  )
}

/** The day by the clock of the site, not of the device. */
function Left({ at }: { at: string }) {
  const { timeZone } = useMe().site
  return (
    <span className="soft">
      , left <time dateTime={at}>{format(atSite(new Date(at), timeZone), 'd MMM yyyy')}</time>
    </span>
  )
}
