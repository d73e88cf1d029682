import { type Calculator, shelves } from '@glandkeeper/bench/calculator'
import { calculators } from '@glandkeeper/bench/calculators'
import { Link, NavLink, useParams, useSearchParams } from 'react-router'
import page from '../../ui/page.module.css'
import { CalculatorPanel } from './calculator-panel.tsx'
import css from './bench.module.css'

/** Every calculator, usable without a register: the list beside, the chosen one in the middle of the bench. */
export function BenchPage() {
  const { calculator: name } = useParams()
  const [search] = useSearchParams()
  const chosen = calculators.find((calculator) => calculator.name === name)
  const tag = search.get('valve')
  return (
    <main className={page.page}>
      <title>{chosen ? `${chosen.title} · Bench · Glandkeeper` : 'Bench · Glandkeeper'}</title>
      <div className={page.title}>
        <h1>Bench</h1>
        <span className="soft">
          {tag === null
            ? 'arithmetic for a gland, with or without a valve of the register'
            : `filled in from ${tag}; change what you like, nothing is saved`}
        </span>
        {chosen && (
          <Link to={tag === null ? '/bench' : `/bench?valve=${encodeURIComponent(tag)}`} className={css.all}>
            All calculators
          </Link>
        )}
      </div>
      <div className={chosen ? css.bench : css.shelvesAlone}>
        <Shelves tag={tag} />
        {chosen && <CalculatorPanel key={`${chosen.name} ${tag ?? ''}`} calculator={chosen} tag={tag} />}
        {name !== undefined && !chosen && <p role="alert">There is no calculator at this address. Choose one from the list.</p>}
      </div>
    </main>
  )
}

function Shelves({ tag }: { tag: string | null }) {
  return (
    <nav className={css.shelves} aria-label="Calculators">
      {Object.entries(shelves).map(([shelf, title]) => (
        <section key={shelf}>
          <h2>{title}</h2>
          <ul>
            {calculators
              .filter((calculator) => calculator.shelf === shelf)
              .map((calculator) => (
                <li key={calculator.name}>
                  <NavLink to={benchAddress(calculator, tag)}>{calculator.title}</NavLink>
                  <span className="soft">{calculator.question}</span>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </nav>
  )
}

function benchAddress(calculator: Pick<Calculator, 'name'>, tag: string | null): string {
  return `/bench/${calculator.name}${tag === null ? '' : `?valve=${encodeURIComponent(tag)}`}`
}
