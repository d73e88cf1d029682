import { isRouteErrorResponse, Link, useRouteError } from 'react-router'
import page from '../ui/page.module.css'
import { ProblemNote } from '../ui/problem-note.tsx'

/** Whatever a page threw, in words, with a way out. */
export function FaultPage() {
  const error = useRouteError()
  if (isRouteErrorResponse(error) && error.status === 404) return <NotFoundPage />
  return (
    <main className={page.page}>
      <h1>This page cannot be shown</h1>
      <ProblemNote error={error} again={{ words: 'Load the page again', onPress: () => location.reload() }} />
      <p>
        <Link to="/">Go to the board</Link>
      </p>
    </main>
  )
}

export function NotFoundPage() {
  return (
    <main className={page.page}>
      <h1>Nothing is at this address</h1>
      <p>
        The page may have been moved, or the address has a letter too many. <Link to="/">Go to the board</Link>
      </p>
    </main>
  )
}
