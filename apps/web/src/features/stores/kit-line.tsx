import type { StockItem } from '@glandkeeper/contract/stores'
import type { KitLine } from '@glandkeeper/contract/kits'
import { Link } from 'react-router'
import { asSentence } from '../../ui/sentence.ts'
import { formatAmount } from './amount-words.ts'
import { stillToGo } from './kit-issue.ts'
import { lineStands, wasteInWords } from './kit-words.ts'
import { Reels } from './reel-bars.tsx'
import { TagList } from './tag-list.tsx'
import css from './kit.module.css'

/** One line of a kit: how much is needed, there and gone out, and the reels it is cut from. */
export function KitLineDrawn({ line, items }: { line: KitLine; items: readonly StockItem[] }) {
  const { itemId, name, unit, needed, onHand, issued, tags, reels, short } = line
  const stands = lineStands(line, stillToGo(line, items))
  const waste = wasteInWords(line)
  return (
    <section className={css.line} aria-label={name}>
      <div className={css.head}>
        <h2>{itemId === null ? name : <Link to={`/stores/items/${itemId}`}>{name}</Link>}</h2>
        <span>
          needed <b>{formatAmount(needed, unit)}</b>
        </span>
        <span>
          on hand <b>{formatAmount(onHand, unit)}</b>
        </span>
        <span>
          issued <b>{formatAmount(issued, unit)}</b>
        </span>
        {stands !== null && <span>{stands}</span>}
      </div>
      <p>
        For <TagList tags={tags} />
      </p>
      {short.map((words) => (
        <p key={words} className={css.missing}>
          {asSentence(words)}
        </p>
      ))}
      {reels.length > 0 && <Reels reels={reels} />}
      {waste !== null && <p>{waste}</p>}
    </section>
  )
}
