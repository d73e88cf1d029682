import type { ExampleRule, LeakRule } from '@glandkeeper/contract/leak-rules'
import { useState } from 'react'
import page from '../../ui/page.module.css'
import css from './leak-rules.module.css'
import { RuleForm } from './rule-form.tsx'
import { exampleInWords } from './rule-words.ts'

interface AddRuleProps {
  examples: readonly ExampleRule[]
  /** With the rule that was added; null where none was. */
  onDone: (rule: LeakRule | null) => void
}

type Start = { readonly example: ExampleRule | null }

/** From an example or from nothing; either way every figure is looked at before it is saved. */
export function AddRule({ examples, onDone }: AddRuleProps) {
  const [start, setStart] = useState<Start | null>(null)
  if (start) {
    const { example } = start
    return (
      <section className={css.part} aria-label="Add a rule">
        {example && (
          <p className={css.example}>
            {exampleInWords(example.paragraph)}. Mark: {example.mark}.
          </p>
        )}
        <RuleForm
          rule={null}
          start={example?.rule ?? null}
          exampleOf={example?.paragraph ?? null}
          onDone={(rule) => onDone(rule)}
        />
      </section>
    )
  }
  return (
    <section className={css.part} aria-labelledby="add-rule">
      <h2 id="add-rule">What the rule begins from</h2>
      <ul className={css.examples}>
        {examples.map((example) => (
          <li key={example.key}>
            <h3>{example.paragraph}</h3>
            <p>{example.what}</p>
            <p className={css.example}>
              {exampleInWords(example.paragraph)}. Mark: {example.mark}.
            </p>
            <button type="button" aria-label={`Begin from ${example.paragraph}`} onClick={() => setStart({ example })}>
              Begin from this one
            </button>
          </li>
        ))}
      </ul>
      <div className={page.acts}>
        <button type="button" onClick={() => setStart({ example: null })}>
          Begin with empty fields
        </button>
        <button type="button" onClick={() => onDone(null)}>
          Do not add one
        </button>
      </div>
    </section>
  )
}
