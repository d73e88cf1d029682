import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { Blank } from './cutting.tsx'
import look from './cut-card.module.css'

export function Cautions({ card: { cautions, hazards } }: { card: CutCard }) {
  return (
    <section className={look.caution}>
      <Warning title="Before a nut is loosened" lines={cautions} />
      <Warning title="This valve" lines={hazards} />
    </section>
  )
}

function Warning({ title, lines }: { title: string; lines: readonly string[] }) {
  return (
    <div>
      <h2 className="hot">{title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  )
}

export function Open({ card: { open } }: { card: CutCard }) {
  if (open.length === 0) return null
  return (
    <section>
      <h2 className="hot">Open: measure or ask, and write it here</h2>
      <table className={look.steps}>
        <tbody>
          {open.map(({ what, says }) => (
            <tr key={what + says}>
              <td>{says}</td>
              <td className="let">{what}</td>
              <td>
                <Blank />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
