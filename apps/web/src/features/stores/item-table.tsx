import type { StockItem, StockOutlook } from '@glandkeeper/contract/stores'
import { Link } from 'react-router'
import page from '../../ui/page.module.css'
import { asSentence } from '../../ui/sentence.ts'
import { formatAmount, whatItIs } from './amount-words.ts'
import { byUrgency, expiryInWords, mindInWords, orderInWords, shortageInWords } from './order-words.ts'
import { Sparkline } from './sparkline.tsx'
import css from './stores.module.css'

interface ItemTableProps {
  items: readonly StockItem[]
  /** Null while it is read, or when it could not be. */
  outlook: { readonly items: readonly StockOutlook[]; readonly until: string } | null
  today: string
}

/** What is there, how it will go, and what to do: what needs a hand first stands on top. */
export function ItemTable({ items, outlook, today }: ItemTableProps) {
  const byItem = new Map(outlook?.items.map((each) => [each.itemId, each]))
  const rows = byUrgency(items.map((item) => ({ item, outlook: byItem.get(item.itemId) ?? null })))
  return (
    <table className={`${page.table} ${css.rows}`}>
      <caption>What to order first stands on top. Dashed: the balance as the plan in use will leave it.</caption>
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col" className={page.figure}>
            On hand
          </th>
          <th scope="col" className={page.figure}>
            Least stock
          </th>
          <th scope="col">Balance over the plan</th>
          <th scope="col">To do</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <ItemRow key={row.item.itemId} {...row} today={today} until={outlook?.until ?? today} />
        ))}
      </tbody>
    </table>
  )
}

interface ItemRowProps {
  item: StockItem
  outlook: StockOutlook | null
  today: string
  until: string
}

function ItemRow({ item, outlook, today, until }: ItemRowProps) {
  return (
    <tr>
      <th scope="row">
        <Link to={`/stores/items/${item.itemId}`}>{item.name}</Link>
        <span className="soft">{whatItIs(item)}</span>
      </th>
      <td className={page.figure} data-name="on hand">
        <span className={item.onHand < 0 ? css.hand : undefined}>{formatAmount(item.onHand, item.unit)}</span>
      </td>
      <td className={page.figure} data-name="least stock">
        {formatAmount(item.leastStock, item.unit)}
      </td>
      <td className={css.drawn}>{outlook && <Sparkline item={item} outlook={outlook} today={today} until={until} />}</td>
      <td>
        <ToDo item={item} outlook={outlook} today={today} />
      </td>
    </tr>
  )
}

/** The act, then the reason. */
export function ToDo({ item, outlook, today }: Pick<ItemRowProps, 'item' | 'outlook' | 'today'>) {
  const order = outlook && orderInWords(outlook, item.unit, today)
  const shortage = outlook && shortageInWords(outlook, item.unit)
  const minded = mindInWords(item)
  const expires = (outlook?.expires ?? []).map(({ on, amount }) => expiryInWords(on, amount, item.unit))
  if (!order && !shortage && minded.length + expires.length === 0) return <span className="soft">Nothing to order.</span>
  return (
    <>
      {order && <b className={outlook?.isLate ? css.hand : undefined}>{asSentence(order)} </b>}
      {shortage && <span>{asSentence(shortage)} </span>}
      {[...minded, ...expires].map((line) => (
        <span key={line}>{line} </span>
      ))}
    </>
  )
}
