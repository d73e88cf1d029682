import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { Round } from '@glandkeeper/contract/rounds'
import { useOutbox } from '../../platform/outbox/use-outbox.ts'
import { counted } from '../../ui/count.ts'
import { useMe } from '../people/index.tsx'
import { gapUnits, NotSaved, useKeptChoice } from '../readings/index.ts'
import { enteredAt } from './entered.ts'
import { EntryRow } from './entry-row.tsx'
import { LeaveGuard } from './leave-guard.tsx'
import { PaperHead } from './paper-head.tsx'
import { cellNames, cells, isEmpty } from './row-texts.ts'
import { arrivedOn, newRow, standingOf } from './typed-round.ts'
import { useSaving } from './use-saving.ts'
import { useTypedRound } from './use-typed-round.ts'
import look from './round-entry.module.css'

/** The paper as a grid: a row for each stop, columns as they are printed, one button for all rows. */
export function EntryGrid({ round, cards }: { round: Round; cards: readonly ValveCard[] }) {
  const { timeZone } = useMe().site
  const view = useOutbox()
  const [gapUnit, chooseGapUnit] = useKeptChoice('gap-unit', gapUnits)
  const typing = useTypedRound(round)
  const { typed } = typing
  const byId = new Map(cards.map((card) => [card.valve.valveId, card]))
  const saving = useSaving({ round, typing, cards: byId, gapUnit, timeZone })
  const rows = round.stops.map((stop) => {
    const row = typed.rows[stop.valveId] ?? newRow
    return { stop, row, standing: standingOf(row, stop, { ...view, arrived: arrivedOn(byId.get(stop.valveId) ?? null) }) }
  })
  const unsaved = rows.filter(({ row, standing }) => standing.is === 'open' && !isEmpty(row.texts)).length
  const toSave = unsaved + rows.filter(({ standing }) => standing.is === 'refused').length
  const fixed = rows.filter(({ standing }) => standing.is === 'fixed').length
  return (
    <>
      <PaperHead round={round} typed={typed} gapUnit={gapUnit} onGapUnit={chooseGapUnit} onAbout={typing.about} />
      <form
        className={look.form}
        noValidate
        aria-label="Rows of the paper"
        onSubmit={(event) => {
          event.preventDefault()
          void saving.save()
        }}
      >
        <Headings gapUnit={gapUnit} />
        <ol className={look.rows}>
          {rows.map(({ stop, row, standing }, place) => {
            const card = byId.get(stop.valveId) ?? null
            return (
              <EntryRow
                key={stop.valveId}
                stop={stop}
                place={place}
                description={card?.valve.description ?? ''}
                texts={row.texts}
                standing={standing}
                says={row.says}
                entered={isEmpty(row.texts) ? enteredAt(stop, { waiting: view.entries, card, timeZone }) : null}
                faults={saving.faultsOf(stop, row, standing)}
                questions={saving.questionsOf(stop, row)}
                gapUnit={gapUnit}
                onType={(cell, text) => typing.type(stop.valveId, cell, text)}
              />
            )
          })}
        </ol>
        <LeaveGuard unsaved={unsaved} />
        <div className={look.foot}>
          {typing.fault !== null && <NotSaved fault={typing.fault} onAgain={() => void saving.save()} />}
          <p role="status">{saving.told || `${fixed} of ${counted(rows.length, 'stop')} typed in`}</p>
          <button type="submit" className="main" disabled={toSave === 0 || saving.isSaving} aria-keyshortcuts="Control+Enter">
            {toSave === 0 ? 'Save rows' : `Save ${counted(toSave, 'row')}`}
          </button>
        </div>
      </form>
    </>
  )
}

/** Over the columns of a desk; each cell has its own name for those who hear the page, and for a phone. */
function Headings({ gapUnit }: { gapUnit: string }) {
  return (
    <div className={look.headings} aria-hidden="true">
      <span>Stop</span>
      {cells.map((cell) => (
        <span key={cell}>{cell === 'gapLeft' || cell === 'gapRight' ? `${cellNames[cell]}, ${gapUnit}` : cellNames[cell]}</span>
      ))}
    </div>
  )
}
