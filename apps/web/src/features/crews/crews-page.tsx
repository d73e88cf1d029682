import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import page from '../../ui/page.module.css'
import { CalendarAddresses } from '../calendars/index.tsx'
import { ForRegisterKeepers } from '../people/index.tsx'
import { AreaWalks } from './area-walks.tsx'
import { Crews } from './crews.tsx'
import { DaysOffOfSite } from './days-off.tsx'
import { crewsOfSite } from './queries.ts'

/** What the plan of rounds works with: who walks, when nobody does, and how each area is walked. */
export function CrewsPage() {
  return (
    <ForRegisterKeepers>
      <CrewsAndDaysOff />
    </ForRegisterKeepers>
  )
}

function CrewsAndDaysOff() {
  const crews = useQuery(crewsOfSite)
  return (
    <main className={page.page}>
      <title>Crews and days off · Glandkeeper</title>
      <div className={page.title}>
        <h1>Crews and days off</h1>
        <Link to="/register">Back to the register</Link>
      </div>
      <p>The plan of rounds is made from these: what is changed here counts at the next planning.</p>
      <Crews />
      <DaysOffOfSite />
      <AreaWalks />
      <CalendarAddresses crews={crews.data?.crews ?? []} />
    </main>
  )
}
