import type { Calculator } from '@glandkeeper/bench/calculator'
import { useState } from 'react'
import { asText } from './as-text.ts'
import type { Texts } from './typed-inputs.ts'

interface CopyAsTextProps {
  calculator: Calculator
  texts: Texts
  answer: Readonly<Record<string, unknown>>
}

/** For a message or a job sheet. Where the clipboard is closed to the page, the text is shown to be taken by hand. */
export function CopyAsText({ calculator, texts, answer }: CopyAsTextProps) {
  const [state, setState] = useState<'not yet' | 'copied' | 'shown'>('not yet')
  const text = asText(calculator, texts, answer, window.location.href)
  const copy = () => {
    // Undefined on a page that is not served safely.
    const clipboard = navigator.clipboard as Clipboard | undefined
    if (clipboard === undefined) setState('shown')
    else
      clipboard.writeText(text).then(
        () => setState('copied'),
        () => setState('shown'),
      )
  }
  return (
    <div>
      <button type="button" onClick={copy}>
        Copy as text
      </button>{' '}
      <span role="status">{state === 'copied' ? 'copied, with the address of this page' : ''}</span>
      {state === 'shown' && <pre>{text}</pre>}
    </div>
  )
}
