import type { Calculator } from '@glandkeeper/bench/calculator'
import { asSentence } from '../../ui/sentence.ts'
import page from '../../ui/page.module.css'
import css from './bench.module.css'
import { type AnswerPart, answerParts } from './figures-in-words.ts'

/** A verdict is bold, a sentence is not. */
const LONGEST_BOLD = 28

export function Answer({ calculator, answer }: { calculator: Calculator; answer: Readonly<Record<string, unknown>> }) {
  const parts = answerParts(calculator.output, answer)
  const lines = parts.filter((part) => part.kind === 'figure' || part.kind === 'word')
  return (
    <>
      {lines.length > 0 && (
        <dl className={css.figures}>
          {lines.map((part) => (
            <Line key={part.name} part={part} />
          ))}
        </dl>
      )}
      {parts.map((part) =>
        part.kind === 'sentences' ? (
          <Sentences key={part.name} part={part} />
        ) : part.kind === 'table' ? (
          <Table key={part.name} part={part} />
        ) : null,
      )}
    </>
  )
}

function Line({ part }: { part: Extract<AnswerPart, { kind: 'figure' | 'word' }> }) {
  return (
    <div>
      <dt>{part.label}</dt>
      <dd>
        {part.kind === 'figure' ? (
          <b className="fig">{part.figure}</b>
        ) : (
          <span className={part.says.length > LONGEST_BOLD ? undefined : css.word}>{part.says}</span>
        )}
        {part.kind === 'figure' && part.inches !== null && <span className="soft fig"> {part.inches}</span>}
      </dd>
    </div>
  )
}

function Sentences({ part }: { part: Extract<AnswerPart, { kind: 'sentences' }> }) {
  return (
    <div>
      <h3>{part.label}</h3>
      <ul className={css.sentences}>
        {part.says.map((sentence) => (
          <li key={sentence}>{asSentence(sentence)}</li>
        ))}
      </ul>
    </div>
  )
}

function Table({ part }: { part: Extract<AnswerPart, { kind: 'table' }> }) {
  return (
    <div className={page.wide}>
      <h3>{part.label}</h3>
      <table className={page.table}>
        <thead>
          <tr>
            {part.heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {part.rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, index) => (
                <td key={part.heads[index]} className="fig">
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
