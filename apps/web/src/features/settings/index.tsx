import type { QuantityMeta } from '@glandkeeper/contract/quantity'
import type { Confirmed, FigureMark } from '@glandkeeper/contract/settings'
import { useMutation } from '@tanstack/react-query'
import { format } from 'date-fns'
import { useState, type SubmitEvent } from 'react'
import { atSite } from '../../platform/site-time.ts'
import { NumberInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import css from './confirmable-figure.module.css'
import { figureInWords, readTyped } from './figure-words.ts'

interface ConfirmableFigureProps {
  meta: QuantityMeta
  value: number
  /** How far the default is to be trusted; null where there is none. */
  mark: FigureMark | null
  confirmed: Confirmed | null
  usually?: number
  why?: string
  /** Null for those who may only look. */
  save: ((value: number) => Promise<unknown>) | null
}

/** One figure the site may take on its own word: what it is, what it stands on, and the two ways to act on it. */
export function ConfirmableFigure({ meta, value, mark, confirmed, usually, why, save }: ConfirmableFigureProps) {
  const [isChanging, setIsChanging] = useState(false)
  const confirm = useMutation({ mutationFn: async () => save?.(value) })
  return (
    <li className={css.row}>
      <div className={css.about}>
        <h3 className={css.label}>{meta.label}</h3>
        {why !== undefined && <p className="soft">{why}</p>}
      </div>
      <p className={confirmed ? css.figure : `${css.figure} ${css.unconfirmed}`}>{figureInWords(value, meta.unit)}</p>
      <p className="soft">
        {!confirmed && 'default, '}
        <FigureOrigin mark={mark} confirmed={confirmed} />
        {confirmed && mark !== null && usually !== undefined && `; the default is ${figureInWords(usually, meta.unit)}, ${mark}`}
      </p>
      {save && !isChanging && (
        <div className={css.acts}>
          {!confirmed && (
            <button
              type="button"
              className={css.quiet}
              aria-label={`Confirm ${meta.label}`}
              disabled={confirm.isPending}
              onClick={() => confirm.mutate()}
            >
              Confirm
            </button>
          )}
          <button type="button" className={css.quiet} aria-label={`Change ${meta.label}`} onClick={() => setIsChanging(true)}>
            Change
          </button>
        </div>
      )}
      {save && isChanging && <ChangeForm meta={meta} value={value} save={save} onDone={() => setIsChanging(false)} />}
      {confirm.error && (
        <div className={css.wide}>
          <ProblemNote error={confirm.error} />
        </div>
      )}
    </li>
  )
}

interface ChangeFormProps {
  meta: QuantityMeta
  value: number
  save: (value: number) => Promise<unknown>
  onDone: () => void
}

function ChangeForm({ meta, value, save, onDone }: ChangeFormProps) {
  const [typed, setTyped] = useState(String(value))
  const [fault, setFault] = useState<string>()
  const change = useMutation({ mutationFn: save, onSuccess: onDone })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    const read = readTyped(typed, meta)
    setFault(read.fault)
    if (read.value !== undefined) change.mutate(read.value)
  }
  return (
    <form className={`${css.wide} ${css.form}`} onSubmit={submit} noValidate aria-label={`Change ${meta.label}`}>
      <NumberInput quantity={meta} value={typed} onChange={setTyped} fault={fault} />
      {change.error && <ProblemNote error={change.error} />}
      <div className={css.acts}>
        <button type="submit" disabled={change.isPending}>
          Save the figure
        </button>
        <button type="button" onClick={onDone}>
          Leave it as it was
        </button>
      </div>
    </form>
  )
}

interface FigureOriginProps {
  mark: FigureMark | null
  confirmed: Confirmed | null
}

/** What a figure stands on: `confirmed by Priya Lindqvist, 4 May 2026`, or the mark of the default. */
export function FigureOrigin({ mark, confirmed }: FigureOriginProps) {
  const { timeZone } = useMe().site
  if (!confirmed) return mark ?? 'no source'
  return (
    <>
      confirmed by {confirmed.by},{' '}
      <time dateTime={confirmed.at}>{format(atSite(new Date(confirmed.at), timeZone), 'd MMM yyyy')}</time>
    </>
  )
}
