import { trades } from '@glandkeeper/contract/outages'
import type { RepackSlot } from '@glandkeeper/contract/repack-plans'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import css from './repacks.module.css'
import { firstDayInWords, slotInWords, usedInWords } from './slot-words.ts'
import { formatDay } from '../../platform/site-time.ts'

interface SlotTableProps {
  slots: readonly RepackSlot[]
  chosen: string | null
  onChoose: (slotId: string) => void
}

/** The same as the drawing, in rows: outages, and fortnights with something in them. */
export function SlotTable({ slots, chosen, onChoose }: SlotTableProps) {
  const shown = slots.filter(({ kind, repacks }) => kind === 'outage' || repacks > 0)
  const empty = slots.length - shown.length
  return (
    <>
      <table className={`${page.table} ${css.rows} ${css.slots}`}>
        <caption>Slots of the plan: hours used of those there</caption>
        <thead>
          <tr>
            <th scope="col">Slot</th>
            <th scope="col">First day</th>
            <th scope="col" className={page.figure}>
              Repacks
            </th>
            {trades.map((trade) => (
              <th key={trade} scope="col" className={page.figure}>
                {capital(trade)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((slot) => (
            <Row key={slot.slotId} slot={slot} isChosen={slot.slotId === chosen} onChoose={() => onChoose(slot.slotId)} />
          ))}
        </tbody>
      </table>
      {empty > 0 && <p className="soft">Fortnights without a repack are left out: {empty}.</p>}
    </>
  )
}

function Row({ slot, isChosen, onChoose }: { slot: RepackSlot; isChosen: boolean; onChoose: () => void }) {
  return (
    <tr>
      <th scope="row">
        <button type="button" className={css.quiet} aria-pressed={isChosen} onClick={onChoose}>
          {capital(slotInWords(slot))}
        </button>
      </th>
      <td className={slot.kind === 'fortnight' ? css.said : css.day} data-name="first day">
        {slot.kind === 'outage' ? firstDayInWords(slot) : formatDay(slot.earliestOn)}
      </td>
      <td className={page.figure} data-name="repacks">
        {slot.repacks}
      </td>
      {trades.map((trade) => (
        <td key={trade} className={page.figure} data-name={trade}>
          {usedInWords(slot, trade)}
        </td>
      ))}
    </tr>
  )
}
