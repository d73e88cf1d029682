import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Drawing } from '@glandkeeper/drawings/drawing'
import {
  jointsInWords,
  jointsUnknown,
  loadHeading,
  spannersInWords,
  studsInWords,
  torqueUnknown,
  turnsOfNuts,
} from '@glandkeeper/drawings/cut-card-words'
import { Drawn } from '../../ui/drawn.tsx'
import { Blank } from './cutting.tsx'
import look from './cut-card.module.css'

export function Joints({ card, drawing }: { card: CutCard; drawing: Drawing | null }) {
  return (
    <div>
      <h2>Joints, from above</h2>
      {drawing ? <Drawn drawing={drawing} /> : <p className="soft">{jointsUnknown}</p>}
      {jointsInWords(card).map((line) => (
        <p key={line} className={look.small}>
          {line}
        </p>
      ))}
    </div>
  )
}

export function Load({ card: { steps, load } }: { card: CutCard }) {
  return (
    <div>
      <h2>{loadHeading}</h2>
      <table className={look.steps}>
        <tbody>
          {steps.map(({ torque, says }) => (
            <tr key={says}>
              <th scope="row">{torque === null ? 'by hand' : torque.toFixed(1)}</th>
              <td>{says}</td>
              <td>
                <Tick />
              </td>
            </tr>
          ))}
          {load === null && (
            <tr>
              <th scope="row">
                <Blank />
              </th>
              <td>{torqueUnknown}</td>
              <td>
                <Tick />
              </td>
            </tr>
          )}
        </tbody>
      </table>
      <p className="soft">{turnsOfNuts}</p>
      {load?.warning && <p className={`hot ${look.warning}`}>{load.warning}</p>}
      {load?.says.map((line) => (
        <p key={line} className={look.small}>
          {line}
        </p>
      ))}
    </div>
  )
}

/** For a pen. */
function Tick() {
  return <span className={look.tick} aria-hidden="true" />
}

export function Proof({ card: { proof, followUp } }: { card: CutCard }) {
  return (
    <>
      <div>
        <h2>Proof, before it is handed back</h2>
        <table className={look.steps}>
          <tbody>
            {proof.map((line) => (
              <tr key={line}>
                <td>{line}</td>
                <td>
                  <Tick />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div>
        <h2>Afterwards</h2>
        {followUp.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p className={look.written}>
          Due on <Blank />
        </p>
        <p className={look.written}>
          Gaps read: left <Blank /> right <Blank />
        </p>
      </div>
    </>
  )
}

export function Spanners({ card }: { card: CutCard }) {
  return (
    <div>
      <h2>Spanner for {studsInWords(card)}</h2>
      <p className={card.spanners.length === 0 ? 'soft' : 'let'}>
        {card.spanners.length === 0 ? 'Not known: try at the nut, and write the size here.' : spannersInWords(card)}
      </p>
      {card.threadCautions.map((line) => (
        <p key={line}>Look-alike thread: {line}</p>
      ))}
    </div>
  )
}
