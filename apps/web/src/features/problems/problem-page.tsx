import { problems } from '@glandkeeper/contract/problem'
import { Link, useParams } from 'react-router'
import page from '../../ui/page.module.css'

/** What the `type` of every problem answer points to: what it means, and what to do. For people and for programmers. */
export function ProblemPage() {
  const { word = '', what = '' } = useParams()
  const code = `${word}/${what}`
  const known = Object.entries(problems).find(([name]) => name === code)?.[1]
  return (
    <main className={page.page}>
      <title>{`${known?.title ?? 'No such problem'} · Glandkeeper`}</title>
      <h1>{known?.title ?? 'No such problem'}</h1>
      {known && <p>{known.help}</p>}
      {known && (
        <p className="soft">
          {code} · status {known.status} ·{' '}
          {known.retry ? 'the same request may succeed later' : 'the same request will be refused again'}
        </p>
      )}
      <p>
        <Link to="/">To the board</Link>
      </p>
    </main>
  )
}
