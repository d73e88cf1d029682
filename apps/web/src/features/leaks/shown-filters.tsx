import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { siteAreas } from '../register/queries.ts'
import { outagesOfSite } from '../repacks/queries.ts'
import { filterNames, type LeakView, withLeaks } from './leak-address.ts'
import { filterInWords } from './leak-words.ts'
import css from './leaks.module.css'

/** What narrows the list, in words, also where another page set it; each can be taken away. */
export function ShownFilters({ view }: { view: LeakView }) {
  const areas = useQuery(siteAreas).data?.areas
  const outages = useQuery({ ...outagesOfSite, enabled: view.filters.afterOutage !== undefined }).data?.outages
  const named = {
    areaName: (code: string) => areas?.find((area) => area.code === code)?.name ?? code,
    outageName: (id: string) => outages?.find(({ outageId }) => outageId === id)?.name ?? 'an outage',
  }
  const set = filterNames.flatMap((name) => {
    const value = view.filters[name]
    return value === undefined ? [] : [{ name, words: filterInWords(name, value, named) }]
  })
  if (set.length === 0) return null
  return (
    <ul aria-label="Filters that are set" className={css.set}>
      {set.map(({ name, words }) => (
        <li key={name}>
          {words}{' '}
          <Link to={withLeaks(view, { [name]: null })} preventScrollReset aria-label={`Take away: ${words}`}>
            take away
          </Link>
        </li>
      ))}
      {set.length > 1 && (
        <li>
          <Link to="?" preventScrollReset>
            Show all leaks
          </Link>
        </li>
      )}
    </ul>
  )
}
