import { ProblemError } from '../../platform/client.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import look from './pad.module.css'

/** The entry keeps its id, so sending it again cannot double it. */
export function NotSent({ error, onAgain }: { error: unknown; onAgain: () => void }) {
  return (
    <>
      {error instanceof ProblemError ? <ProblemNote error={error} /> : null}
      <p role="alert" className={look.note}>
        <b>Not sent.</b>{' '}
        {error instanceof ProblemError
          ? 'The entry is still here.'
          : 'The server does not answer. The entry is still here: stay on this page and send it again.'}
      </p>
      <button type="button" className={`main ${look.main}`} onClick={onAgain}>
        Send again
        <small>the same entry: it cannot be doubled</small>
      </button>
    </>
  )
}
