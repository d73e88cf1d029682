import { AreaInput, type Area } from '@glandkeeper/contract/areas'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { useState, type SubmitEvent } from 'react'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { NumberInput, TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useSaveArea } from './queries.ts'
import css from './register-page.module.css'

/** Adds an area, or changes the one given. */
export function AreaForm({ area, onDone }: { area?: Area; onDone: () => void }) {
  const [typed, setTyped] = useState({
    code: area?.code ?? '',
    name: area?.name ?? '',
    walkPosition: String(area?.walkPosition ?? ''),
    level: String(area?.level ?? 0),
  })
  const [faults, setFaults] = useState<readonly Fault[]>([])
  const save = useSaveArea(area?.code ?? null)
  const told = faultsTold(save.error, faults)
  const field = (name: keyof typeof typed) => ({
    value: typed[name],
    onChange: (value: string) => setTyped({ ...typed, [name]: name === 'code' ? value.toUpperCase() : value }),
    fault: faultBeside(name, typed[name], told),
  })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const checked = AreaInput.safeParse({ ...typed, walkPosition: figureOf(typed.walkPosition), level: figureOf(typed.level) })
    setFaults(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(checked.data, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={area ? `Change area ${area.name}` : 'Add an area'}>
      <div className={css.fields}>
        <TextInput label="Code" hint="capitals: BH, SM-2" maxLength={12} {...field('code')} />
        <TextInput label="Name" hint="boiler house" maxLength={80} {...field('name')} />
        <NumberInput quantity={quantityOf('walkPosition')} {...field('walkPosition')} />
        <NumberInput quantity={quantityOf('level')} {...field('level')} />
      </div>
      {save.error && <ProblemNote error={save.error} />}
      <div className={css.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          {area ? 'Save the area' : 'Add the area'}
        </button>
        <button type="button" onClick={onDone}>
          {area ? 'Leave it as it was' : 'Do not add one'}
        </button>
      </div>
    </form>
  )
}

function quantityOf(field: 'walkPosition' | 'level') {
  const quantity = quantities.get(innermost(AreaInput.shape[field]))
  if (!quantity) throw new Error(`${field} is not in the registry of quantities`)
  return quantity
}

function figureOf(text: string): number | undefined {
  return text.trim() === '' ? undefined : Number(text)
}
