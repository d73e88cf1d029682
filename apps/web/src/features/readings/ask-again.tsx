import { useEffect, useRef } from 'react'
import look from './pad.module.css'

interface AskAgainProps {
  questions: readonly string[]
  onYes: () => void
  onNo: () => void
}

/** Possible but odd: the person at the valve decides, after a second look. */
export function AskAgain({ questions, onYes, onNo }: AskAgainProps) {
  const asked = useRef<HTMLDivElement>(null)
  // The button that was pressed is gone: who uses keys or hears the page goes on here.
  useEffect(() => asked.current?.focus(), [])
  return (
    <div ref={asked} tabIndex={-1} role="alertdialog" aria-labelledby="ask-again" className={look.note}>
      <div id="ask-again">
        {questions.map((question) => (
          <p key={question}>{question}</p>
        ))}
        <p>Is it really so?</p>
      </div>
      <div className={look.pair}>
        <button type="button" onClick={onNo}>
          Change it
        </button>
        <button type="button" className="main" onClick={onYes}>
          It is so, save it
        </button>
      </div>
    </div>
  )
}
