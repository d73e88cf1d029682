import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { LeakRule, listLeakRules } from '@glandkeeper/contract/leak-rules'
import { useQuery } from '@tanstack/react-query'
import { format } from 'date-fns'
import { lazy, Suspense, useState } from 'react'
import { Link, useNavigate, useSearchParams } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { Reading } from '../../ui/reading.tsx'
import { LeakPages } from '../leaks/index.tsx'
import { keepsRegister, useMe, useSiteToday } from '../people/index.tsx'
import css from './leak-rules.module.css'
import { leakRules } from './queries.ts'
import { TheRule } from './the-rule.tsx'

const AddRule = lazy(async () => ({ default: (await import('./add-rule.tsx')).AddRule }))

/** What must be done about leaks by when, by the rules a site has set for itself. */
export function LeakRulesPage() {
  const known = useQuery(leakRules)
  const { site } = useMe()
  const today = format(useSiteToday(), 'd MMM yyyy')
  return (
    <main className={page.page}>
      <title>Rules and clocks · Glandkeeper</title>
      <div className={page.title}>
        <h1>Rules and clocks</h1>
        <LeakPages />
      </div>
      <p className={css.onPaper}>{`${site.name}, ${today}`}</p>
      <p className={css.caution}>What your permit and local code ask for decides; these clocks are an aid.</p>
      {known.data ? <Rules rules={known.data.rules} examples={known.data.examples} /> : <Reading query={known} things="rules" />}
    </main>
  )
}

function Rules({ rules, examples }: OkOf<typeof listLeakRules>) {
  const mayChange = keepsRegister(useMe())
  const [address] = useSearchParams()
  const go = useNavigate()
  const [isAdding, setIsAdding] = useState(false)
  const chosen = rules.find(({ ruleId }) => ruleId === address.get('rule')) ?? rules[0]
  const added = (rule: LeakRule | null) => {
    setIsAdding(false)
    if (rule) void go(`?rule=${rule.ruleId}`)
  }
  return (
    <>
      {(rules.length > 0 || (mayChange && !isAdding)) && (
        <div className={`${page.acts} ${css.hands}`}>
          {rules.length > 0 && (
            <nav aria-label="Rules of the site" className={css.choices}>
              {rules.map(({ ruleId, name }) => (
                <Link key={ruleId} to={`?rule=${ruleId}`} aria-current={ruleId === chosen?.ruleId ? 'true' : undefined}>
                  {name}
                </Link>
              ))}
            </nav>
          )}
          {mayChange && !isAdding && (
            <button type="button" onClick={() => setIsAdding(true)}>
              Add a rule
            </button>
          )}
        </div>
      )}
      {isAdding && (
        <Suspense fallback={<p role="status">Fetching the form</p>}>
          <AddRule examples={examples} onDone={added} />
        </Suspense>
      )}
      {chosen ? (
        <TheRule key={chosen.ruleId} rule={chosen} mayChange={mayChange} />
      ) : (
        !isAdding && <NoRule mayChange={mayChange} />
      )}
    </>
  )
}

function NoRule({ mayChange }: { mayChange: boolean }) {
  return (
    <Empty title="No rule yet">
      <p>
        A rule says from which reading on a valve leaks, how soon it is to be tried and mended, and how often it is looked at with
        a meter. {mayChange ? 'Add one from an example or with your own figures.' : 'Planners and engineers add one.'}
      </p>
    </Empty>
  )
}
