import type { StockItem } from '@glandkeeper/contract/stores'
import { formatDay } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { formatAmount, lotsWord, lotWord } from './amount-words.ts'
import css from './stores.module.css'

/** What is on the shelf, reel by reel; what expires first stands on top. */
export function Lots({ item }: { item: StockItem }) {
  const { kind, lots, unit } = item
  return (
    <section className={css.section} aria-labelledby="lots">
      <h2 id="lots">{capital(lotsWord(kind))}</h2>
      {lots.length === 0 ? (
        <p className="soft">None is there.</p>
      ) : (
        <table className={`${page.table} ${css.rows}`}>
          <thead>
            <tr>
              <th scope="col">{capital(lotWord(kind))}</th>
              <th scope="col">Batch</th>
              <th scope="col" className={page.figure}>
                Left
              </th>
              <th scope="col">Good until</th>
            </tr>
          </thead>
          <tbody>
            {lots.map(({ lotId, label, batch, amount, expiresOn, isExpired }) => (
              <tr key={lotId}>
                <th scope="row">
                  <span className="let">{label}</span>
                </th>
                <td data-name="batch" className="let">
                  {batch}
                </td>
                <td data-name="left" className={page.figure}>
                  <span className={amount < 0 ? css.hand : undefined}>{formatAmount(amount, unit)}</span>
                </td>
                <td data-name="good until">
                  {expiresOn === null ? (
                    <span className="soft">does not expire</span>
                  ) : (
                    <>
                      <time dateTime={expiresOn}>{formatDay(expiresOn)}</time>
                      {isExpired && <b className="hot"> expired: not counted</b>}
                    </>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}

/** What is awaited; late ones say so. */
export function OpenOrders({ item: { onOrder, unit }, today }: { item: StockItem; today: string }) {
  if (onOrder.length === 0) return null
  return (
    <section className={css.section} aria-labelledby="orders">
      <h2 id="orders">On order</h2>
      <ul className={css.needs}>
        {onOrder.map(({ orderId, amount, expectedOn }) => (
          <li key={orderId}>
            <span className="let">{formatAmount(amount, unit)}</span>, expected{' '}
            <time dateTime={expectedOn}>{formatDay(expectedOn)}</time>
            {expectedOn < today && <b className="hot"> should be here</b>}
          </li>
        ))}
      </ul>
    </section>
  )
}
