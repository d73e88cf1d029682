import { Fragment } from 'react'
import { inGroups } from './evidence-words.ts'
import css from './evidence.module.css'

/** A fingerprint or a head as it is compared with one on paper: in groups of four, under one another. */
export function Letters({ of }: { of: string }) {
  const groups = inGroups(of)
  const upTo = (index: number) => groups.slice(0, index + 1).join('')
  return (
    <span className={css.letters}>
      {groups.map((group, index) => (
        <Fragment key={upTo(index)}>
          <span>{group}</span>{' '}
        </Fragment>
      ))}
    </span>
  )
}
