import { useEffect, useState } from 'react'

const PAUSE_IN_TYPING_MS = 250

/**
 * What is typed into the fields of a filter: written down together after a pause in typing, so that none undoes another.
 * An address changed elsewhere, by a link or the way back, changes what stands in the fields.
 */
export function useTyped<Fields extends Readonly<Record<string, string>>>(
  looked: Fields,
  write: (typed: Fields) => void,
): [Fields, (change: Partial<Fields>) => void] {
  const [typed, setTyped] = useState(looked)
  const [asked, setAsked] = useState(looked)
  const [seen, setSeen] = useState(looked)
  if (!isSame(looked, seen)) {
    setSeen(looked)
    if (!isSame(looked, asked)) {
      setAsked(looked)
      setTyped(looked)
    }
  }
  useEffect(() => {
    const wanted = trimmed(typed)
    if (isSame(wanted, asked)) return
    const pause = setTimeout(() => {
      setAsked(wanted)
      write(wanted)
    }, PAUSE_IN_TYPING_MS)
    return () => clearTimeout(pause)
  })
  return [typed, (change) => setTyped((before) => ({ ...before, ...change }))]
}

function isSame(one: Readonly<Record<string, string>>, other: Readonly<Record<string, string>>): boolean {
  return Object.entries(one).every(([field, text]) => other[field] === text)
}

function trimmed<Fields extends Readonly<Record<string, string>>>(typed: Fields): Fields {
  return Object.fromEntries(Object.entries(typed).map(([field, text]) => [field, text.trim()])) as Fields
}
