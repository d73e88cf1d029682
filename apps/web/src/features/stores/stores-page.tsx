import { format } from 'date-fns'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { formatDay } from '../../platform/site-time.ts'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { keepsRegister, useMe, useSiteToday } from '../people/index.tsx'
import { ItemForm } from './item-form.tsx'
import { ItemTable } from './item-table.tsx'
import { NotInStore, NotWorkedOut } from './not-in-store.tsx'
import { stockOfSite, stockOutlook } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'

/** What the store keeps for glands, what the plan takes of it, and what to order by when. */
export function StoresPage() {
  const stock = useQuery(stockOfSite)
  const outlook = useQuery(stockOutlook)
  const today = format(useSiteToday(), 'yyyy-MM-dd')
  const mayChange = keepsRegister(useMe())
  const [isAdding, setIsAdding] = useState(false)
  return (
    <main className={page.page}>
      <title>Stores · Glandkeeper</title>
      <div className={page.title}>
        <h1>Stores</h1>
        <span className="soft">
          {outlook.data ? `what the plan in use takes until ${formatDay(outlook.data.until)}` : 'packing, studs and spacers'}
        </span>
      </div>
      {mayChange &&
        (isAdding ? (
          <ItemForm onDone={() => setIsAdding(false)} />
        ) : (
          <div className={page.acts}>
            <button type="button" onClick={() => setIsAdding(true)}>
              Add an item
            </button>
          </div>
        ))}
      {outlook.data && <NotInStore unknown={outlook.data.unknown} />}
      {!stock.data && <Reading query={stock} things="stock" />}
      {stock.data?.items.length === 0 && (
        <Empty title="The store has nothing in it yet">
          <p>Add what is kept for glands, then put down what came: reels with their batches, boxes of studs.</p>
        </Empty>
      )}
      {stock.data && stock.data.items.length > 0 && (
        <ItemTable items={stock.data.items} outlook={outlook.data ?? null} today={today} />
      )}
      {outlook.data ? <NotWorkedOut open={outlook.data.open} /> : stock.data && <Reading query={outlook} things="outlook" />}
    </main>
  )
}
