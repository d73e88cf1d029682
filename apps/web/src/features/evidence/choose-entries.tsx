import { useQuery } from '@tanstack/react-query'
import { useNavigate } from 'react-router'
import { ChoiceInput, TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useTyped } from '../../ui/typed.ts'
import { siteAreas } from '../register/queries.ts'
import { type EntryChoice, withChoice } from './evidence-address.ts'
import css from './evidence.module.css'
import { tagsLike } from './queries.ts'

const kinds: Readonly<Record<EntryChoice['of'], string>> = { all: 'all valves', valve: 'one valve', area: 'an area' }

/** One valve, an area or all; first and last day, by the calendar of the site. */
export function ChooseEntries({ choice }: { choice: EntryChoice }) {
  const go = useNavigate()
  const [chosen, choose] = useTyped({ ...choice }, (made) => {
    void go(withChoice(made, {}), { replace: true, preventScrollReset: true })
  })
  return (
    <>
      <fieldset className={css.kinds}>
        <legend>Entries of</legend>
        {(Object.keys(kinds) as EntryChoice['of'][]).map((of) => (
          <label key={of}>
            <input type="radio" name="of" checked={chosen.of === of} onChange={() => choose({ of, tag: '', area: '' })} />{' '}
            {kinds[of]}
          </label>
        ))}
      </fieldset>
      <div className={css.fields}>
        {chosen.of !== 'all' && (
          <div className={css.which}>
            {chosen.of === 'valve' ? (
              <TagInput tag={chosen.tag} onChange={(tag) => choose({ tag })} />
            ) : (
              <AreaInput code={chosen.area} onChange={(area) => choose({ area })} />
            )}
          </div>
        )}
        <TextInput
          label="From"
          type="date"
          hint="empty: from the first"
          value={chosen.from}
          onChange={(from) => choose({ from })}
        />
        <TextInput label="To" type="date" hint="empty: until now" value={chosen.to} onChange={(to) => choose({ to })} />
      </div>
    </>
  )
}

function TagInput({ tag, onChange }: { tag: string; onChange: (tag: string) => void }) {
  const offered = useQuery(tagsLike(tag.trim()))
  return (
    <TextInput
      label="Tag of the valve"
      maxLength={40}
      autoComplete="off"
      suggestions={offered.data ?? []}
      value={tag}
      onChange={onChange}
    />
  )
}

function AreaInput({ code, onChange }: { code: string; onChange: (code: string) => void }) {
  const areas = useQuery(siteAreas)
  if (areas.error && !areas.data)
    return <ProblemNote error={areas.error} again={{ words: 'Read the areas again', onPress: () => void areas.refetch() }} />
  const known = areas.data?.areas.toSorted((one, other) => one.walkPosition - other.walkPosition) ?? []
  return (
    <ChoiceInput
      label="Area"
      value={code === '' ? null : code}
      choices={known.map((area) => ({ value: area.code, words: `${area.code} ${area.name}` }))}
      onChange={onChange}
    />
  )
}
