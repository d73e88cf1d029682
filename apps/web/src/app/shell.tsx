import type { Person } from '@glandkeeper/contract/people'
import { useQuery } from '@tanstack/react-query'
import { format } from 'date-fns'
import { useEffect, useState } from 'react'
import { Link, Navigate, NavLink, Outlet, ScrollRestoration, useLocation } from 'react-router'
import { keepsRegister, keptPerson, me, SignedInProvider, useMe, useSignOut } from '../features/people/index.tsx'
import { emptyPocket, KeepPocket } from '../features/pocket/index.tsx'
import type { SignInState } from '../features/people/sign-in-page.tsx'
import { SyncLine } from '../features/waiting/index.tsx'
import { outbox } from '../platform/outbox/outbox.ts'
import { useOutbox } from '../platform/outbox/use-outbox.ts'
import { atSite } from '../platform/site-time.ts'
import { Hatchings } from '../ui/hatchings.tsx'
import { ProblemNote } from '../ui/problem-note.tsx'
import css from './shell.module.css'
import { chooseTheme, useTheme } from './theme.ts'

/** Every page but the sign-in: who is signed in, the header, the hatchings all drawings refer to. */
export function Shell() {
  const session = useQuery(me)
  const { pathname, search } = useLocation()
  const personId = session.data?.personId ?? null
  useEffect(() => outbox.signedIn(personId), [personId])
  if (session.isPending) return <Opening />
  if (session.data === undefined) {
    return (
      <main className={css.alone}>
        <ProblemNote error={session.error} again={{ words: 'Try again', onPress: () => void session.refetch() }} />
      </main>
    )
  }
  // A session that has run out must not stop who stands at a valve: entries are kept here, and sent after the next sign-in.
  const goesOn = session.data === null && isFieldPage(pathname) ? keptPerson() : null
  const person = session.data ?? goesOn
  if (person === null) return <Navigate to="/sign-in" replace state={{ back: pathname + search } satisfies SignInState} />
  return (
    <SignedInProvider value={person}>
      <Hatchings />
      <a href="#page" className={css.skip}>
        Skip to the page
      </a>
      <KeepPocket />
      <Header person={person} isAtValve={isFieldPage(pathname) && pathname !== '/rounds'} />
      {goesOn && (
        <p role="status" className={css.signedOut}>
          Your session has run out. Entries are kept on this device. <Link to="/sign-in">Sign in to send them</Link>
        </p>
      )}
      <div id="page" tabIndex={-1} className={css.under}>
        <Outlet />
      </div>
      <ScrollRestoration />
    </SignedInProvider>
  )
}

/** Pages that work from what this device carries. */
function isFieldPage(pathname: string): boolean {
  return /^\/(rounds|waiting|find)(\/|$)|^\/valves\/[^/]+\/(log|cut-card|proof)$/.test(pathname)
}

/** Shown while the first answer or the code of a page is on its way. */
export function Opening() {
  return (
    <p className={`soft ${css.alone}`} role="status">
      Opening the register
    </p>
  )
}

/** On a walk a phone keeps its height for the work; the way back is on the page. */
function Header({ person, isAtValve }: { person: Person; isAtValve: boolean }) {
  const today = atSite(useNow(), person.site.timeZone)
  return (
    <header className={`head ${css.head} ${isAtValve ? css.atValve : ''}`}>
      <Link to="/" className={css.home}>
        <b>Glandkeeper</b>
      </Link>
      <span className={`soft ${css.site}`}>
        {person.site.name} · <time dateTime={format(today, 'yyyy-MM-dd')}>{format(today, "EEEE d MMMM yyyy, 'week' I")}</time>
      </span>
      <nav aria-label="Pages" className={css.nav}>
        <NavLink to="/" end>
          Board
        </NavLink>
        <NavLink to="/rounds">Rounds</NavLink>
        <NavLink to="/repacks">Repacks</NavLink>
        <NavLink to="/stores">Stores</NavLink>
        <NavLink to="/leaks">Leaks</NavLink>
        <NavLink to="/bench">Bench</NavLink>
        <NavLink to="/forecasts">Forecasts</NavLink>
        <NavLink to="/register">Register</NavLink>
        <NavLink to="/packings">Packings</NavLink>
        <NavLink to="/log">Log</NavLink>
        {keepsRegister(person) && <NavLink to="/imports">Imports</NavLink>}
      </nav>
      <SyncLine />
      <div className={css.person}>
        <span className={css.name}>{person.name}</span>
        <ThemeSwitch />
        <SignOut />
      </div>
    </header>
  )
}

/** Looked at each minute: a page left open over midnight shows the new day. */
function useNow(): Date {
  const [now, setNow] = useState(() => new Date())
  useEffect(() => {
    const clock = setInterval(() => setNow(new Date()), 60_000)
    return () => clearInterval(clock)
  }, [])
  return now
}

function ThemeSwitch() {
  const other = useTheme() === 'paper' ? 'night' : 'paper'
  return (
    <button
      type="button"
      className={css.plain}
      onClick={() => chooseTheme(other)}
      aria-label={other === 'night' ? 'Show as on the night shift' : 'Show on paper'}
    >
      {other === 'night' ? 'Night' : 'Paper'}
    </button>
  )
}

/** Not with entries that only this device has: they are sent, or downloaded, first. */
function SignOut() {
  const signOut = useSignOut()
  const { entries, photos } = useOutbox()
  const { personId } = useMe()
  // Those of somebody else stay on the device, and are sent when they sign in: for that this person must be able to leave.
  const unsent = [...entries, ...photos].filter((each) => each.personId === personId).length
  if (unsent > 0)
    return (
      <Link to="/waiting" className={css.plain}>
        Sign out after {unsent} unsent
      </Link>
    )
  return (
    <button
      type="button"
      className={css.plain}
      onClick={() => signOut.mutate(undefined, { onSuccess: () => void emptyPocket() })}
      disabled={signOut.isPending}
    >
      {signOut.isError ? 'Not signed out: try again' : 'Sign out'}
    </button>
  )
}
