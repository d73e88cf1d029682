import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { turnsOfNuts } from '@glandkeeper/drawings/cut-card-words'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'

export interface Step {
  readonly says: string
  /** Several boxes to tick, each with its name; one without a name where there are none. */
  readonly ticks: readonly string[]
}

const step = (says: string, ticks: readonly string[] = []): Step => ({ says, ticks })

/**
 * A repack from the isolated valve to the follow-up, each step with what the card says of it.
 * Their order, and every word that is not the card's: common practice, no source.
 */
export function stepsOf(card: CutCard): Step[] {
  return [...outWithTheOld(), ...measured(card), ...inWithTheNew(card), ...torqued(card), ...proved(card)]
}

function outWithTheOld(): Step[] {
  return [
    step(
      'The first page is filled in by the authorised person: isolated, locked, drained, vented, zero proved, and the isolation tried.',
    ),
    step(
      'Nuts slackened slowly, a quarter turn at a time, alternately; clear of the stem line, since pressure can be trapped even now.',
    ),
    step('Follower raised and held clear. Threads of studs and nuts looked at, cleaned, and renewed where they are worn.'),
    step(
      'All old rings out, down to the bottom of the box, and with them what stands between: count them and keep them in order. ' +
        'What each looks like goes into the record.',
    ),
  ]
}

function measured({ gland: { stemDiameter, boxBore } }: CutCard): Step[] {
  const figures = [
    stemDiameter === null ? null : `stem ${millimetres(stemDiameter)}`,
    boxBore === null ? null : `bore ${millimetres(boxBore)}`,
  ].filter((figure) => figure !== null)
  return [
    step('Stem and box clean and looked at: no scores, pits or bend. Both measured at three heights, for the record.'),
    step(
      figures.length === 2
        ? `They measure as on the card, ${figures.join(' and ')}. If not, stop and ask: section and length follow from them.`
        : 'Stem or bore is not in the register: the card waits for them. Ask before anything is cut.',
    ),
  ]
}

function inWithTheNew({ form, rings, cut, joints, steps }: CutCard): Step[] {
  const count = rings === null ? 'Rings' : `${rings.count} rings`
  const byHand = steps.filter(({ torque }) => torque === null).map(({ says }) => says)
  return [
    form === 'die-formed'
      ? step(`${count} laid out, as pressed; none is cut from cord.`)
      : step(
          `${count} cut as on the card${cut === null ? '' : `, ${millimetres(cut.length)} each`}; the first one closes round the bar.`,
        ),
    step(
      `Loaded ring by ring: ${byHand.join('; ')}.`,
      joints.map(({ ring, clock }) => `${ring} at ${clock}`),
    ),
    step('Follower entered square and nuts run up by hand, alternately: both gaps equal.'),
  ]
}

function torqued({ load, steps }: CutCard): Step[] {
  if (load === null)
    return [step(`${turnsOfNuts} The torque is not worked out: see what is open on the cut card, and ask before loading.`)]
  return steps.flatMap(({ torque, says }) =>
    torque === null ? [] : [step(`${torque.toFixed(1)} N·m on each nut, a quarter turn at a time, alternately: ${says}.`)],
  )
}

function proved({ proof, followUp }: CutCard): Step[] {
  return [
    ...proof.map((says) => step(says)),
    step('Record filled in, old packing and tools taken away; handed back on the first page, to the authorised person.'),
    ...followUp.map((says) => step(says)),
  ]
}
