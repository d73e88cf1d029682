import { useQuery } from '@tanstack/react-query'
import { stockInReach } from '../stores/queries.ts'
import { FigureStepper } from './figure-stepper.tsx'
import { type PackingSource, workedOut } from './reel.ts'
import { type ReelChoice, reelChoices, type WantedPacking } from './reel-choices.ts'
import look from './pad.module.css'

export interface ReelFieldsProps {
  source: PackingSource
  wanted: WantedPacking
  rings: number | null
  /** Wraps that are cut beside the rings: one where a set is wound on a bar. */
  wrapsMore: number
  /** With what a reel holds, where that is not the packing that was wanted. */
  onChange: (change: Partial<PackingSource>, other: ReelChoice['packing'] | null) => void
}

const ISSUED_BEFORE = 'kit issued before'

/** Batch, and the reel it was cut from: what is left on the reel is then known without another word. */
export function ReelFields({ source, wanted, rings, wrapsMore, onChange }: ReelFieldsProps) {
  const { batch, reel, taken } = source
  const stock = useQuery(stockInReach)
  const { fitting, others } = reelChoices(stock.data ?? [], wanted)
  const choices = [...fitting, ...others]
  const isListed = choices.some(({ lotId }) => lotId === reel?.lotId)
  const choose = (lotId: string) => {
    const chosen = choices.find((choice) => choice.lotId === lotId)
    // What was printed on a reel goes with it.
    if (!chosen) return onChange({ reel: null, batch: '', taken: null }, null)
    const { batch: printed, packing, ...kept } = chosen
    onChange({ reel: kept, batch: printed, taken: null }, others.includes(chosen) ? packing : null)
  }
  const options = (from: readonly ReelChoice[]) =>
    from.map(({ lotId, says }) => (
      <option key={lotId} value={lotId}>
        {says}
      </option>
    ))
  return (
    <>
      {(choices.length > 0 || reel !== null) && (
        <label className={look.kind}>
          <span>From</span>
          <select value={reel?.lotId ?? ''} onChange={({ target }) => choose(target.value)}>
            <option value="">{ISSUED_BEFORE}</option>
            {reel && !isListed && <option value={reel.lotId}>{reel.says}</option>}
            {fitting.length > 0 && <optgroup label="fits this gland">{options(fitting)}</optgroup>}
            {others.length > 0 && <optgroup label="other packing in the store">{options(others)}</optgroup>}
          </select>
        </label>
      )}
      {reel && (
        <div className={look.gaps}>
          <span>Taken</span>
          <FigureStepper
            key={reel.lotId}
            label={reel.unit === 'm' ? 'Taken from the reel, m' : 'Taken from the box, pieces'}
            short={reel.unit === 'm' ? 'm' : 'no.'}
            value={taken}
            guess={workedOut(reel, rings, wrapsMore)}
            step={reel.unit === 'm' ? 0.1 : 1}
            decimals={reel.unit === 'm' ? 2 : 0}
            onChange={(amount) => onChange({ taken: amount }, null)}
          />
          <span className={look.aside}>{takenInWords(source, rings, wrapsMore)}</span>
        </div>
      )}
      <label className={look.kind}>
        <span>Batch</span>
        <input
          type="text"
          maxLength={40}
          autoComplete="off"
          placeholder="as printed on it"
          value={batch}
          onChange={({ target }) => onChange({ batch: target.value }, null)}
        />
      </label>
    </>
  )
}

function takenInWords({ reel, taken }: PackingSource, rings: number | null, wrapsMore: number): string {
  if (taken !== null || reel === null) return ''
  if (workedOut(reel, rings, wrapsMore) === null) return 'how much is not known: say it'
  const what = reel.unit === 'm' && wrapsMore > 0 ? `${rings} rings and a wrap more` : rings === 1 ? 'one ring' : `${rings} rings`
  return `worked out for ${what}`
}
