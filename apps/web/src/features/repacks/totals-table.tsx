import type { Objective, PlanTotals } from '@glandkeeper/contract/repack-plans'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { costInWords, costNote, differenceInWords, expectedInWords } from './plan-words.ts'
import css from './repacks.module.css'

export interface TotalsColumn {
  readonly name: string
  readonly totals: PlanTotals
  readonly objective: Objective
}

interface Line {
  readonly name: string
  readonly isCost: boolean
  readonly decimals: number
  readonly of: (totals: PlanTotals) => number
}

const lines: readonly Line[] = [
  { name: 'Valves', isCost: false, decimals: 0, of: ({ valves }) => valves },
  { name: 'Repacked', isCost: false, decimals: 0, of: ({ repacks }) => repacks },
  { name: 'Wait', isCost: false, decimals: 0, of: ({ waits }) => waits },
  { name: 'Expected to run out before', isCost: false, decimals: 1, of: ({ expectedOut }) => expectedOut },
  { name: 'Leaks expected before', isCost: false, decimals: 1, of: ({ expectedLeaks }) => expectedLeaks },
  { name: 'Cost of running out', isCost: true, decimals: 2, of: ({ cost }) => cost.running },
  { name: 'Cost of leaks', isCost: true, decimals: 2, of: ({ cost }) => cost.leaks },
  { name: 'Packing thrown away early', isCost: true, decimals: 2, of: ({ cost }) => cost.waste },
  { name: 'Cost in all', isCost: true, decimals: 2, of: ({ cost }) => cost.total },
]

/** Totals side by side, each with how far it is from those of the first column. */
export function TotalsTable({ caption, columns }: { caption: string; columns: readonly TotalsColumn[] }) {
  const first = columns[0]
  if (!first) return null
  const isOneCost = columns.every(({ objective }) => objective === first.objective)
  return (
    <table className={`${page.table} ${css.totals}`}>
      <caption>{[caption, ...new Set(columns.map(({ objective }) => costNote[objective]))].join(' ')}</caption>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          {columns.map(({ name }, index) => (
            <th key={`${name} ${String(index)}`} scope="col" className={page.figure}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.name}>
            <th scope="row">{line.name}</th>
            {columns.map((column, index) => (
              <td key={`${column.name} ${String(index)}`} className={page.figure}>
                {figureOf(line, column)}
                {index > 0 && (!line.isCost || isOneCost) && <Difference line={line} column={column} first={first} />}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function figureOf({ isCost, decimals, of }: Line, { totals, objective }: TotalsColumn): string {
  if (isCost) return costInWords(of(totals), objective)
  return decimals === 0 ? formatCount(of(totals)) : expectedInWords(of(totals))
}

function Difference({ line, column, first }: { line: Line; column: TotalsColumn; first: TotalsColumn }) {
  const decimals = line.isCost && first.objective === 'money' ? 0 : line.decimals
  const words = differenceInWords(line.of(column.totals) - line.of(first.totals), decimals)
  return words === '' ? null : <span className={`soft ${css.line}`}>{words}</span>
}
