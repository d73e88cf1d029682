import type { LeakRule } from '@glandkeeper/contract/leak-rules'
import { lazy, Suspense, useRef, useState } from 'react'
import { counted } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import css from './leak-rules.module.css'
import { RegulatedState } from './regulated-state.tsx'
import { exampleInWords, ruleInWords } from './rule-words.ts'

const RuleForm = lazy(async () => ({ default: (await import('./rule-form.tsx')).RuleForm }))
const MonitorForm = lazy(async () => ({ default: (await import('./monitor-form.tsx')).MonitorForm }))

type Act = 'change' | 'valves'

/** One rule: what it asks for, what may be changed of it, and how its leaks and valves stand. */
export function TheRule({ rule, mayChange }: { rule: LeakRule; mayChange: boolean }) {
  const [act, setAct] = useState<Act | null>(null)
  const opener = useRef<HTMLButtonElement>(null)
  const close = () => {
    // What had the focus goes away: the keyboard goes on at the buttons of the rule.
    opener.current?.focus()
    setAct(null)
  }
  return (
    <>
      <section className={css.part} aria-labelledby="the-rule">
        <h2 id="the-rule">
          {rule.name} <span className="soft">{counted(rule.valves, 'valve')} under it</span>
        </h2>
        {rule.exampleOf !== null && <p className={css.example}>{exampleInWords(rule.exampleOf)}</p>}
        <div className={css.asks}>
          {ruleInWords(rule).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        <div className={`${page.acts} ${css.hands}`}>
          {mayChange && (
            <>
              <button
                type="button"
                ref={opener}
                aria-expanded={act === 'change'}
                onClick={() => setAct(act === 'change' ? null : 'change')}
              >
                Change the figures
              </button>
              <button type="button" aria-expanded={act === 'valves'} onClick={() => setAct(act === 'valves' ? null : 'valves')}>
                Put valves under it
              </button>
            </>
          )}
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
        <Suspense fallback={<p role="status">Fetching the form</p>}>
          {act === 'change' && <RuleForm rule={rule} start={rule} exampleOf={rule.exampleOf} onDone={close} />}
          {act === 'valves' && <MonitorForm rule={rule} onDone={close} />}
        </Suspense>
      </section>
      <RegulatedState ruleId={rule.ruleId} />
    </>
  )
}
