import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { SiteInput } from '@glandkeeper/contract/sites'
import { useState, type SubmitEvent } from 'react'
import { TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { useChangeSite } from './queries.ts'
import css from './site-page.module.css'

const timeZones = Intl.supportedValuesOf('timeZone')

export function SiteForm({ site, onDone }: { site: SiteInput; onDone: () => void }) {
  const [typed, setTyped] = useState({ name: site.name, timeZone: site.timeZone, nextStopOn: site.nextStopOn ?? '' })
  const [found, setFound] = useState<readonly Fault[]>([])
  const save = useChangeSite()
  const told = faultsTold(save.error, found)
  const field = (name: keyof SiteInput) => ({
    value: typed[name],
    onChange: (value: string) => setTyped({ ...typed, [name]: value }),
    fault: faultBeside(name, typed[name], told),
  })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const checked = SiteInput.safeParse({ ...typed, nextStopOn: typed.nextStopOn.trim() === '' ? null : typed.nextStopOn.trim() })
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(checked.data, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label="Change the site">
      <div className={css.fields}>
        <TextInput label="Name" hint="stands at the top of every page" maxLength={80} {...field('name')} />
        <TextInput
          label="Time zone"
          hint="a place: Europe/London; days and weeks are counted there"
          maxLength={60}
          suggestions={timeZones}
          {...field('timeZone')}
        />
        <TextInput
          label="Next planned stop"
          hint="first day, as 2027-06-09; forecasts count up to it. Empty where none is planned"
          maxLength={10}
          {...field('nextStopOn')}
        />
      </div>
      {save.error && <ProblemNote error={save.error} />}
      <div className={css.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          Save the site
        </button>
        <button type="button" onClick={onDone}>
          Leave it as it was
        </button>
      </div>
    </form>
  )
}
