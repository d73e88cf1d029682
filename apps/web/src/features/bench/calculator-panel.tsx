import type { Calculator } from '@glandkeeper/bench/calculator'
import { useQuery } from '@tanstack/react-query'
import { useMemo } from 'react'
import { useSearchParams } from 'react-router'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { asSentence } from '../../ui/sentence.ts'
import { siteFamilies } from '../packings/queries.ts'
import { valveQuery } from '../valves/queries.ts'
import { Answer } from './answer.tsx'
import css from './bench.module.css'
import { BenchInput } from './bench-input.tsx'
import { benchDrawings } from './bench-drawings.ts'
import { CopyAsText } from './copy-as-text.tsx'
import { fieldsOf } from './fields.ts'
import { startingTexts } from './starting-texts.ts'
import { readAndCompute, type Texts } from './typed-inputs.ts'
import { WhereFrom } from './where-from.tsx'

/** One calculator: what is typed on the left, what comes of it on the right. The address holds all that was typed. */
export function CalculatorPanel({ calculator, tag }: { calculator: Calculator; tag: string | null }) {
  const valve = useQuery({ ...valveQuery(tag ?? ''), enabled: tag !== null })
  const [search, setSearch] = useSearchParams()
  const families = useQuery({ ...siteFamilies, enabled: tag !== null })
  const start = useMemo(() => {
    if (tag === null) return startingTexts(calculator, null)
    // Until valve and packings are read the boxes stay empty: an example would pass for the valve.
    if (!valve.data || !families.data) return { texts: {}, fromValve: new Set<string>() }
    const name = valve.data.state.packingFamily
    const family = families.data.families.find((candidate) => candidate.name === name) ?? null
    return startingTexts(calculator, { history: valve.data, family, now: new Date(valve.dataUpdatedAt) })
  }, [calculator, tag, valve.data, valve.dataUpdatedAt, families.data])
  const typed = textsIn(calculator, search)
  const texts: Texts = { ...start.texts, ...typed }
  const reading = readAndCompute(calculator, texts)
  const change = (name: string, text: string) =>
    setSearch(
      (before) => {
        before.set(name, text)
        return before
      },
      // At once: on a slow machine the next key would else find the address without this one, and take it back.
      { replace: true, preventScrollReset: true, flushSync: true },
    )
  const draw = benchDrawings[calculator.name]
  const [frame, width] = useMeasuredWidth()
  return (
    <article className={css.calculator} aria-labelledby="calculator">
      <header>
        <h2 id="calculator">{calculator.title}</h2>
        <p>{calculator.question}</p>
      </header>
      <form className={css.inputs} onSubmit={(event) => event.preventDefault()}>
        {fieldsOf(calculator.input).map((field) => (
          <BenchInput
            key={field.name}
            field={field}
            text={texts[field.name] ?? ''}
            fault={reading.faults[field.name]}
            readAs={reading.readAs[field.name]}
            note={
              start.fromValve.has(field.name) && !(field.name in typed) ? `from ${tag ?? ''}` : calculator.notes?.[field.name]
            }
            onChange={(text) => change(field.name, text)}
          />
        ))}
      </form>
      <section className={css.answer} aria-live="polite" aria-label="Answer">
        {reading.problem && <p className="hot">{asSentence(reading.problem.detail)}</p>}
        {reading.answer ? (
          <>
            <div ref={frame}>
              {draw && width !== null && width > 0 && draw({ given: reading.given, answer: reading.answer, room: width })}
            </div>
            <Answer calculator={calculator} answer={reading.answer} />
            <CopyAsText calculator={calculator} texts={texts} answer={reading.answer} />
          </>
        ) : (
          !reading.problem && <p className="soft">Fill in what is marked on the left: the answer follows by itself.</p>
        )}
      </section>
      {calculator.caution !== undefined && <p className={css.caution}>{calculator.caution}</p>}
      <WhereFrom calculator={calculator} />
    </article>
  )
}

/** What the address says, by the names of the inputs. */
function textsIn(calculator: Calculator, search: URLSearchParams): Texts {
  const names = Object.keys(calculator.input.shape)
  return Object.fromEntries(names.flatMap((name) => (search.has(name) ? [[name, search.get(name) ?? '']] : [])))
}
