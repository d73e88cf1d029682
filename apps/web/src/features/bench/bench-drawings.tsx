import type { Calculator } from '@glandkeeper/bench/calculator'
import type { joints } from '@glandkeeper/bench/cut/joints'
import type { ringLength } from '@glandkeeper/bench/cut/ring-length'
import type { ringSet } from '@glandkeeper/bench/cut/ring-set'
import type { section } from '@glandkeeper/bench/cut/section'
import type { stressProfile } from '@glandkeeper/bench/load/stress-profile'
import { cordDrawing } from '@glandkeeper/drawings/cord'
import { jointsDrawing } from '@glandkeeper/drawings/joints'
import { ringSetDrawing } from '@glandkeeper/drawings/ring-set'
import { sectionFitDrawing } from '@glandkeeper/drawings/section-fit'
import { stressProfileDrawing } from '@glandkeeper/drawings/stress-profile'
import { mm } from '@glandkeeper/units/quantity'
import type { ReactNode } from 'react'
import type { z } from 'zod'
import { Drawn } from '../../ui/drawn.tsx'

type In<C extends Calculator> = z.output<C['input']>
type Out<C extends Calculator> = z.output<C['output']>

interface Drawable<C extends Calculator> {
  readonly given: In<C>
  readonly answer: Out<C>
  /** Widest a drawing may be, in pixels. */
  readonly room: number
}

const draws = <C extends Calculator>(_name: C['name'], draw: (drawable: Drawable<C>) => ReactNode) =>
  draw as (drawable: { given: unknown; answer: unknown; room: number }) => ReactNode

/** The drawing beside an answer, to scale, where a person would rather look than read. */
export const benchDrawings: Readonly<Record<string, (drawable: { given: unknown; answer: unknown; room: number }) => ReactNode>> =
  {
    section: draws<typeof section>('section', ({ given, answer, room }) => (
      <Drawn
        drawing={sectionFitDrawing({
          ...given,
          sections: answer.nearest.map(({ designation, size }) => ({ designation, size })),
          room,
        })}
      />
    )),
    'ring-length': draws<typeof ringLength>('ring-length', ({ given, answer, room }) => (
      <Drawn
        drawing={cordDrawing({
          ringLength: answer.edgeLength,
          section: given.section,
          cutAngle: given.cutAngle,
          room,
          perMillimetre: Math.min(4, (room - 40) / (answer.overallLength + 1)),
        })}
      />
    )),
    joints: draws<typeof joints>('joints', ({ given, answer, room }) => (
      <Drawn
        drawing={jointsDrawing({
          boxBore: given.boxBore ?? mm(45),
          stemDiameter: given.stemDiameter ?? mm(28),
          positions: answer.joints.map(({ angle }) => angle),
          size: Math.min(240, room - 60),
        })}
      />
    )),
    'ring-set': draws<typeof ringSet>('ring-set', ({ given, answer, room }) => (
      <Drawn
        drawing={ringSetDrawing({
          ...given,
          rings: answer.rings,
          expectedGap: answer.expectedGap,
          consolidatedHeight: answer.consolidatedHeight,
          room,
        })}
      />
    )),
    'stress-profile': draws<typeof stressProfile>('stress-profile', ({ answer, room }) => (
      <Drawn drawing={stressProfileDrawing({ stresses: answer.stresses.map(({ stress }) => stress), room })} />
    )),
  }
