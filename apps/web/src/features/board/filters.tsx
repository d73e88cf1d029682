import { BoardOrder, type showBoardSummary } from '@glandkeeper/contract/board'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { Standing } from '@glandkeeper/contract/reserve'
import type { ReactNode } from 'react'
import { Link, useNavigate } from 'react-router'
import { formatCount } from '../../ui/count.ts'
import { ChoiceInput } from '../../ui/field.tsx'
import { addressWith, type BoardView } from './board-view.ts'
import css from './filters.module.css'
import { FindBox } from './find-box.tsx'

/** Services named as links; the rest of a long list is in a choice beside them. */
const MOST_NAMED = 5
const worstFirst = Standing.options.toReversed()

interface FiltersProps {
  summary: OkOf<typeof showBoardSummary>
  view: BoardView
}

export function Filters({ summary, view }: FiltersProps) {
  return (
    <div className={css.filters}>
      <Group name="Standing">
        <Option view={view} change={{ standing: null }} isChosen={!view.standing} words={`all ${formatCount(summary.total)}`} />
        {worstFirst.map((standing) => (
          <Option
            key={standing}
            view={view}
            change={{ standing }}
            isChosen={view.standing === standing}
            words={`${standing} ${formatCount(summary.standing[standing])}`}
          />
        ))}
      </Group>
      <Services summary={summary} view={view} />
      <Group name="Order">
        {BoardOrder.options.map((order) => (
          <Option key={order} view={view} change={{ order }} isChosen={view.order === order} words={order} />
        ))}
      </Group>
      <FindBox view={view} />
    </div>
  )
}

function Services({ summary, view }: FiltersProps) {
  const navigate = useNavigate()
  const byCount = summary.services.toSorted((one, other) => other.valves - one.valves)
  const named = byCount.slice(0, MOST_NAMED)
  const others = byCount.slice(MOST_NAMED)
  const isOther = others.some(({ service }) => service === view.service)
  return (
    <Group name="Service">
      <Option view={view} change={{ service: null }} isChosen={!view.service} words="any" />
      {named.map(({ service }) => (
        <Option key={service} view={view} change={{ service }} isChosen={view.service === service} words={service} />
      ))}
      {others.length > 0 && (
        <span className={isOther ? `${css.others} ${css.chosen}` : css.others}>
          <ChoiceInput
            label="Other service"
            isLabelHidden
            placeholder="another"
            value={isOther ? (view.service ?? null) : null}
            choices={others.map(({ service, valves }) => ({ value: service, words: `${service} ${formatCount(valves)}` }))}
            onChange={(service) => void navigate(addressWith(view, { service }))}
          />
        </span>
      )}
    </Group>
  )
}

function Group({ name, children }: { name: string; children: ReactNode }) {
  return (
    <nav aria-label={name} className={css.group}>
      <span className="soft" aria-hidden="true">
        {name}
      </span>
      {children}
    </nav>
  )
}

interface OptionProps {
  view: BoardView
  change: Parameters<typeof addressWith>[1]
  isChosen: boolean
  words: string
}

function Option({ view, change, isChosen, words }: OptionProps) {
  return (
    <Link to={addressWith(view, change)} aria-current={isChosen ? 'true' : undefined}>
      {words}
    </Link>
  )
}
