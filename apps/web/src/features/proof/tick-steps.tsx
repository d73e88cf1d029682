import { jointsUnknown, torqueUnknown, turnsOfNuts } from '@glandkeeper/drawings/cut-card-words'
import { RingsStepper } from '../readings/index.ts'
import { FoundFields } from './found-fields.tsx'
import type { StepProps } from './step-props.ts'
import { ticked } from './steps.ts'
import look from './proof.module.css'

const SEATED_BY_ITSELF =
  'Each ring pressed home by itself with the follower or a split bush; never the loose set at once. Count what comes out.'

/** Each ring with its joint as on a clock, the first one in on top. */
export function RingsStep({ draft, plan, card, onChange }: StepProps) {
  return (
    <>
      <FoundFields found={draft.found} rings={plan.rings} onChange={(found) => onChange({ found })} />
      <p>{SEATED_BY_ITSELF}</p>
      {plan.jointsAreUsual && (
        <p>{plan.rings === null ? jointsUnknown : 'Each joint 90° or more from the one below; these are a quarter round.'}</p>
      )}
      <div className={look.figures}>
        <RingsStepper
          label="Rings that go in"
          short="rings"
          value={plan.rings}
          onChange={(rings) => onChange({ rings: asCount(rings), seated: Math.min(draft.seated, asCount(rings) ?? 0) })}
        />
        <span className="soft">{card?.rings ? `the cut card counts ${card.rings.count}` : 'not counted by the cut card'}</span>
      </div>
      <ul className={look.ticks}>
        {plan.joints.map(({ ring, clock }) => (
          <Tick
            key={ring}
            words={`Ring ${ring}`}
            figure={`joint at ${clock}`}
            tick={ring}
            count={draft.seated}
            onTick={() => onChange({ seated: ticked(draft.seated, ring) })}
          />
        ))}
      </ul>
    </>
  )
}

export function LoadStep({ draft, plan, card, onChange }: StepProps) {
  return (
    <>
      <p>
        <b>{turnsOfNuts}</b>
      </p>
      {card?.load?.warning && <p className="hot">{card.load.warning}</p>}
      {!card?.load && <p className="hot">{torqueUnknown.replace(': see what is open below, and', ':')}.</p>}
      <ul className={look.ticks}>
        {plan.loads.map(({ torque, says }, index) => (
          <Tick
            key={says}
            words={says}
            figure={torque === null ? '' : `${torque.toFixed(1)} N·m`}
            tick={index + 1}
            count={draft.loaded}
            onTick={() => onChange({ loaded: ticked(draft.loaded, index + 1) })}
          />
        ))}
      </ul>
    </>
  )
}

interface TickProps {
  words: string
  figure: string
  tick: number
  /** So many are ticked; only the next one can be, or one that is. */
  count: number
  onTick: () => void
}

function Tick({ words, figure, tick, count, onTick }: TickProps) {
  return (
    <li>
      <label className={look.tick}>
        <input type="checkbox" checked={tick <= count} disabled={tick > count + 1} onChange={onTick} />
        <span>{words}</span>
        <b>{figure}</b>
      </label>
    </li>
  )
}

/** What is typed may be no count for the length of a keystroke. */
function asCount(value: number | null): number | null {
  return value !== null && Number.isInteger(value) && value >= 1 && value <= 40 ? value : null
}
