import { format } from 'date-fns'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link, useParams } from 'react-router'
import type { StockItem } from '@glandkeeper/contract/stores'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { counted } from '../../ui/count.ts'
import { keepsRegister, useMe, useSiteToday } from '../people/index.tsx'
import { formatAmount, whatItIs } from './amount-words.ts'
import { BalancePlot } from './balance-plot.tsx'
import { ItemForm } from './item-form.tsx'
import { ToDo } from './item-table.tsx'
import { Lots, OpenOrders } from './lots.tsx'
import { MoveStock } from './movement-form.tsx'
import { Movements } from './movements.tsx'
import { stockOfSite, stockOutlook } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import css from './stores.module.css'

/** One item of the store: how much, how it will go, reel by reel, and everything that happened to it. */
export function ItemPage() {
  const { itemId = '' } = useParams()
  const stock = useQuery(stockOfSite)
  const item = stock.data?.items.find((each) => each.itemId === itemId)
  return (
    <main className={page.page}>
      <title>{`${item?.name ?? 'Item'} · Stores · Glandkeeper`}</title>
      {item ? (
        <KnownItem key={item.itemId} item={item} />
      ) : stock.data ? (
        <>
          <h1>Stores</h1>
          <Empty title="The store has no such item">
            <p>
              <Link to="/stores">Look at the list of the store</Link>
            </p>
          </Empty>
        </>
      ) : (
        <>
          <h1>Stores</h1>
          <Reading query={stock} things="stock" />
        </>
      )}
    </main>
  )
}

function KnownItem({ item }: { item: StockItem }) {
  const outlooks = useQuery(stockOutlook)
  const today = format(useSiteToday(), 'yyyy-MM-dd')
  const mayChange = keepsRegister(useMe())
  const [isChanging, setIsChanging] = useState(false)
  const outlook = outlooks.data?.items.find(({ itemId }) => itemId === item.itemId) ?? null
  return (
    <>
      <div className={page.title}>
        <h1>{item.name}</h1>
        <span className="soft">{whatItIs(item)}</span>
        <Link to="/stores">Back to the stores</Link>
        {mayChange && !isChanging && (
          <button type="button" className={css.quiet} onClick={() => setIsChanging(true)}>
            Change the item
          </button>
        )}
      </div>
      <Figures item={item} />
      <p>
        <ToDo item={item} outlook={outlook} today={today} />
      </p>
      {isChanging && <ItemForm item={item} onDone={() => setIsChanging(false)} />}
      <MoveStock item={item} />
      {outlook && outlooks.data ? (
        <BalancePlot item={item} outlook={outlook} today={today} until={outlooks.data.until} />
      ) : (
        !outlooks.data && <Reading query={outlooks} things="outlook" />
      )}
      <Lots item={item} />
      <OpenOrders item={item} today={today} />
      <Movements item={item} />
    </>
  )
}

function Figures({ item: { onHand, leastStock, packSize, leadTimeDays, unit } }: { item: StockItem }) {
  return (
    <p className={css.figures}>
      <span>
        <b>{formatAmount(onHand, unit)}</b> on hand
      </span>
      <span>
        least stock <b>{formatAmount(leastStock, unit)}</b>
      </span>
      <span>
        sold in <b>{formatAmount(packSize, unit)}</b>
      </span>
      <span>
        takes <b>{counted(leadTimeDays, 'day')}</b> to get
      </span>
    </p>
  )
}
