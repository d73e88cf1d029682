import { problems, type Problem } from '@glandkeeper/contract/problem'
import { nameInWords } from '@glandkeeper/units/format'
import { ProblemError, Unreachable } from '../platform/client.ts'
import css from './problem-note.module.css'
import { asSentence } from './sentence.ts'

interface ProblemNoteProps {
  error: unknown
  /** What to try, in the words of the button: "Save again". */
  again?: { words: string; onPress: () => void }
}

/** Says what was refused, why, and what to do: every fault, not the first only. */
export function ProblemNote({ error, again }: ProblemNoteProps) {
  return (
    <div role="alert" className={css.note}>
      {error instanceof ProblemError ? <Refusal problem={error.problem} /> : <NoAnswer error={error} />}
      {again && (
        <button type="button" onClick={again.onPress}>
          {again.words}
        </button>
      )}
    </div>
  )
}

function Refusal({ problem }: { problem: Problem }) {
  return (
    <>
      <p>
        <b>{problem.title}.</b> {asSentence(problem.detail ?? '')} {problems[problem.code].help}
      </p>
      {problem.errors && problem.errors.length > 0 && (
        <ul>
          {problem.errors.map(({ pointer, detail }) => (
            <li key={pointer + detail}>
              {placeInWords(pointer)}
              {detail}
            </li>
          ))}
        </ul>
      )}
      {problem.code === 'person/not-signed-in' && (
        <p>
          <a href="/sign-in" target="_blank" rel="noreferrer">
            Sign in beside this page
          </a>
          , then come back: what you typed is still here.
        </p>
      )}
      {problem.status >= 500 && problem.instance !== undefined && (
        <p className="soft">Number of this request: {problem.instance}</p>
      )}
    </>
  )
}

function NoAnswer({ error }: { error: unknown }) {
  if (error instanceof Unreachable) {
    return (
      <p>
        <b>The server does not answer.</b> Look at the network of this device, then try again.
      </p>
    )
  }
  return (
    <p>
      <b>This page met a fault of its own.</b> {error instanceof Error ? error.message : String(error)}
    </p>
  )
}

/** @example placeInWords('#/valve/gland/boxBore') // → 'box bore: ' */
function placeInWords(pointer: string): string {
  const last = pointer.split('/').at(-1) ?? ''
  if (last === '' || last === '#') return ''
  return `${nameInWords(last)}: `
}
