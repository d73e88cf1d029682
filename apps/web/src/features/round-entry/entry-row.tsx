import type { RoundStop } from '@glandkeeper/contract/rounds'
import { useId, useState } from 'react'
import type { GapUnit } from '../readings/index.ts'
import { CellInput } from './cell-input.tsx'
import type { RowFault } from './events-of-row.ts'
import { goThroughRows } from './grid-keys.ts'
import { type Cell, cellNames, cells, type RowTexts } from './row-texts.ts'
import type { RowStanding } from './typed-round.ts'
import look from './round-entry.module.css'

export interface EntryRowProps {
  stop: RoundStop
  description: string
  place: number
  texts: RowTexts
  standing: RowStanding
  /** As it was typed; for a row that is fixed. */
  says: string
  /** What was entered at this stop since the round was made. */
  entered: string | null
  faults: readonly RowFault[]
  questions: readonly string[]
  gapUnit: GapUnit
  onType: (cell: Cell, text: string) => void
}

/** One stop of the paper: open to be typed, fixed once it is saved, open again where the register refused it. */
export function EntryRow({ stop, description, standing, says, entered, ...row }: EntryRowProps) {
  const [isAnother, setIsAnother] = useState(false)
  const tagId = useId()
  const isShut = standing.is === 'fixed' || (standing.is === 'open' && entered !== null && !isAnother)
  return (
    <li className={isShut ? `${look.row} ${look.fixed}` : look.row}>
      <div role="group" aria-labelledby={tagId} className={look.cells}>
        <p id={tagId} className={look.stop}>
          <b>
            <span className={look.place}>{stop.position}</span> {stop.tag}
          </b>
          <span className="soft">{description}</span>
        </p>
        {standing.is === 'fixed' ? (
          <p className={look.said}>
            {says} <span className="soft">· {standing.says}</span>
          </p>
        ) : isShut ? (
          <p className={look.said}>
            <span className="soft">Entered already.</span> {entered}
            <button type="button" onClick={() => setIsAnother(true)} onKeyDown={goThroughRows} data-at={`${row.place}:time`}>
              Type another entry
            </button>
          </p>
        ) : (
          <Cells {...row} />
        )}
      </div>
    </li>
  )
}

type CellsProps = Pick<EntryRowProps, 'place' | 'texts' | 'faults' | 'questions' | 'gapUnit' | 'onType'>

function Cells({ place, texts, faults, questions, gapUnit, onType }: CellsProps) {
  const id = useId()
  const faultOf = (cell: Cell) => faults.findIndex((fault) => fault.cell === cell)
  return (
    <>
      {cells.map((cell) => (
        <CellInput
          key={cell}
          cell={cell}
          at={`${place}:${cell}`}
          unit={cell === 'gapLeft' || cell === 'gapRight' ? gapUnit : ''}
          text={texts[cell]}
          faultId={faultOf(cell) < 0 ? undefined : `${id}${faultOf(cell)}`}
          onType={(text) => onType(cell, text)}
        />
      ))}
      {(faults.length > 0 || questions.length > 0) && (
        <div className={look.faults}>
          {faults.map(({ cell, says }, index) => (
            <p key={says} id={`${id}${index}`}>
              {cell && <b>{cellNames[cell]}: </b>}
              {says}
            </p>
          ))}
          {questions.map((question) => (
            <p key={question}>{question}</p>
          ))}
          {questions.length > 0 && <p>Is it really so? Save once more, and it is saved as it stands.</p>}
        </div>
      )}
    </>
  )
}
