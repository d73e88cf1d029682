import { ProblemNote } from './problem-note.tsx'

interface ReadingProps {
  query: { readonly error: unknown; readonly refetch: () => unknown }
  things: string
}

/** While a list is read, and when it could not be. */
export function Reading({ query, things }: ReadingProps) {
  return query.error ? (
    <ProblemNote error={query.error} again={{ words: `Read the ${things} again`, onPress: () => void query.refetch() }} />
  ) : (
    <p role="status">Reading the {things}</p>
  )
}
