import { type ReactNode, useId, useRef, useState } from 'react'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './crews.module.css'

interface AskOnceProps {
  /** The word of the button, and what it says with the name of the thing. */
  act: string
  label: string
  /** What follows, said before it is done. */
  follows: string
  yes: string
  no: string
  change: { readonly isPending: boolean; readonly error: unknown; readonly mutate: () => void; readonly reset: () => void }
  columns: number
  /** The cells of the row before its buttons, and what stands beside this button. */
  cells: ReactNode
  beside?: ReactNode
}

/** A row of a table with a button that says what follows and asks once, in a row of its own: the columns stay as they are. */
export function AskOnceRow({ act, label, follows, yes, no, change, columns, cells, beside }: AskOnceProps) {
  const [isAsked, setIsAsked] = useState(false)
  const opener = useRef<HTMLButtonElement>(null)
  const followsId = useId()
  const keep = () => {
    // The button under the finger goes away: the keyboard goes on where it was before.
    opener.current?.focus()
    change.reset()
    setIsAsked(false)
  }
  const toggle = isAsked ? keep : () => setIsAsked(true)
  return (
    <>
      <tr className={isAsked ? css.above : undefined}>
        {cells}
        <td className={css.change}>
          {beside}
          <button type="button" ref={opener} className={css.quiet} aria-label={label} aria-expanded={isAsked} onClick={toggle}>
            {act}
          </button>
        </td>
      </tr>
      {isAsked && (
        <tr>
          <td colSpan={columns}>
            <div className={css.asked}>
              <p id={followsId}>{follows}</p>
              <div className={page.acts}>
                <button
                  type="button"
                  className="main"
                  aria-describedby={followsId}
                  disabled={change.isPending}
                  onClick={() => change.mutate()}
                >
                  {yes}
                </button>
                <button type="button" onClick={keep}>
                  {no}
                </button>
              </div>
              {change.error !== null && <ProblemNote error={change.error} />}
            </div>
          </td>
        </tr>
      )}
    </>
  )
}
