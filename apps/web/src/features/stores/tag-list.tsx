import { Fragment, useState } from 'react'
import { Link } from 'react-router'
import css from './stores.module.css'

const FIRST_SHOWN = 8

/** Valves by their tags, each a way to its page; the rest at a touch. */
export function TagList({ tags }: { tags: readonly string[] }) {
  const [showsAll, setShowsAll] = useState(false)
  const shown = showsAll ? tags : tags.slice(0, FIRST_SHOWN)
  const more = tags.length - shown.length
  return (
    <span className={css.tags}>
      {shown.map((tag, index) => (
        <Fragment key={tag}>
          {index > 0 && ', '}
          <Link to={`/valves/${encodeURIComponent(tag)}`}>{tag}</Link>
        </Fragment>
      ))}
      {more > 0 && (
        <button type="button" className={css.quiet} onClick={() => setShowsAll(true)}>
          and {more} more
        </button>
      )}
    </span>
  )
}
