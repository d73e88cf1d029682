import { type LeakStudy, StudyPeriod } from '@glandkeeper/contract/leak-study'
import { useQuery } from '@tanstack/react-query'
import { Link, useSearchParams } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { Reading } from '../../ui/reading.tsx'
import { AfterOutages } from './after-outages.tsx'
import { LeakPages } from './index.tsx'
import css from './leaks.module.css'
import { MeanCourse } from './mean-course.tsx'
import { PackingChanges } from './packing-changes.tsx'
import { leakStudy } from './queries.ts'
import { RateTables } from './rate-tables.tsx'
import { RepeatList } from './repeat-list.tsx'
import { StudyHead } from './study-head.tsx'
import { periodOf, periodWords } from './study-words.ts'

/** Which valves leak again and again, and where, in what packing and after what leaks come. */
export function RepeatPage() {
  const [address] = useSearchParams()
  const period = periodOf(address)
  const known = useQuery(leakStudy(period))
  return (
    <main className={page.page}>
      <title>Repeat leakers · Glandkeeper</title>
      <div className={page.title}>
        <h1>Repeat leakers</h1>
        <LeakPages />
      </div>
      {known.data ? (
        <>
          <StudyHead {...known.data} />
          {known.data.study ? (
            <>
              <div aria-busy={known.isPlaceholderData} className={css.study}>
                <Study study={known.data.study} period={period} />
              </div>
            </>
          ) : (
            known.data.share === null && <NoStudy />
          )}
        </>
      ) : (
        <Reading query={known} things="study of leaks" />
      )}
    </main>
  )
}

function NoStudy() {
  return (
    <Empty title="Nobody has made the study yet">
      <p>It reads every entry of the plant once, beside the work, and says where leaks come more often than chance allows.</p>
    </Empty>
  )
}

function Periods({ chosen }: { chosen: StudyPeriod }) {
  return (
    <nav aria-label="Time that is counted" className={css.choices}>
      <span className="soft">What follows is counted over</span>
      {StudyPeriod.options.map((period) => (
        <Link
          key={period}
          to={period === 'all' ? '?' : `?period=${period.replace(' ', '+')}`}
          preventScrollReset
          aria-current={period === chosen ? 'true' : undefined}
        >
          {periodWords[period]}
        </Link>
      ))}
    </nav>
  )
}

function Study({ study, period }: { study: LeakStudy; period: StudyPeriod }) {
  return (
    <>
      <section className={css.part} aria-labelledby="above">
        <h2 id="above">Valves that leak more often than the others</h2>
        <MeanCourse steps={study.meanCourse} />
        <RepeatList study={study} />
      </section>
      <Periods chosen={period} />
      <RateTables study={study} />
      <AfterOutages after={study.afterOutages} />
      <PackingChanges changes={study.packingChanges} />
    </>
  )
}
