import { useEffect, useState } from 'react'
import { Input, Label, SearchField } from 'react-aria-components'
import { useNavigate } from 'react-router'
import { addressWith, type BoardView } from './board-view.ts'
import css from './filters.module.css'

const PAUSE_IN_TYPING_MS = 250

/** Looks while one types, after a pause. A view cleared elsewhere clears the words here. */
export function FindBox({ view }: { view: BoardView }) {
  const navigate = useNavigate()
  const looked = view.find ?? ''
  const [words, setWords] = useState(looked)
  const [asked, setAsked] = useState(looked)
  const [seen, setSeen] = useState(looked)
  if (looked !== seen) {
    setSeen(looked)
    // Changed by somebody else than this box: a cleared filter, the way back.
    if (looked !== asked) {
      setAsked(looked)
      setWords(looked)
    }
  }
  const wanted = words.trim()
  useEffect(() => {
    if (wanted === asked) return
    const pause = setTimeout(() => {
      setAsked(wanted)
      void navigate(addressWith(view, { find: wanted === '' ? null : wanted }), { replace: true })
    }, PAUSE_IN_TYPING_MS)
    return () => clearTimeout(pause)
  })
  return (
    <SearchField value={words} onChange={setWords} className={css.find ?? ''}>
      <Label>Find</Label>
      <Input maxLength={60} placeholder="tag or words" />
    </SearchField>
  )
}
