import look from './pad.module.css'

interface AskAgainProps {
  questions: readonly string[]
  onYes: () => void
  onNo: () => void
}

/** Possible but odd: the person at the valve decides, after a second look. */
export function AskAgain({ questions, onYes, onNo }: AskAgainProps) {
  return (
    <div role="alertdialog" aria-labelledby="ask-again" className={look.note}>
      <div id="ask-again">
        {questions.map((question) => (
          <p key={question}>{question}</p>
        ))}
        <p>Is it really so?</p>
      </div>
      <div className={look.pair}>
        <button type="button" onClick={onNo} autoFocus>
          Change it
        </button>
        <button type="button" className="main" onClick={onYes}>
          It is so, save it
        </button>
      </div>
    </div>
  )
}
