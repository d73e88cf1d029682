import type { joints } from '@glandkeeper/bench/cut/joints'
import type { loadedGap } from '@glandkeeper/bench/cut/loaded-gap'
import type { ringLength } from '@glandkeeper/bench/cut/ring-length'
import type { ringSet } from '@glandkeeper/bench/cut/ring-set'
import type { section } from '@glandkeeper/bench/cut/section'
import type { topUp } from '@glandkeeper/bench/cut/top-up'
import type { wornParts } from '@glandkeeper/bench/cut/worn-parts'
import { cordDrawing } from '@glandkeeper/drawings/cord'
import { jointsDrawing } from '@glandkeeper/drawings/joints'
import { loadedGapDrawing } from '@glandkeeper/drawings/loaded-gap'
import { ringSetDrawing } from '@glandkeeper/drawings/ring-set'
import { sectionFitDrawing } from '@glandkeeper/drawings/section-fit'
import { topUpDrawing } from '@glandkeeper/drawings/top-up'
import { wornPartsDrawing } from '@glandkeeper/drawings/worn-parts'
import { mm } from '@glandkeeper/units/quantity'
import { Drawn } from '../../ui/drawn.tsx'
import { type Draws, draws } from './drawable.ts'

/** Px: a short thick ring is not drawn higher than this. */
const HIGHEST_CORD = 64

export const cutDrawings: Draws = {
  section: draws<typeof section>('section', ({ given, answer, room }) => (
    <Drawn
      drawing={sectionFitDrawing({
        ...given,
        sections: answer.nearest.map(({ designation, size }) => ({ designation, size })),
        room,
      })}
    />
  )),
  'worn-parts': draws<typeof wornParts>('worn-parts', ({ given, room }) => (
    <Drawn
      drawing={wornPartsDrawing({
        stemDiameters: given.stemDiameters,
        boreDiameters: given.boreDiameters,
        stemAsNew: given.stemAsNew ?? null,
        boreAsNew: given.boreAsNew ?? null,
        followerBore: given.followerBore ?? null,
        neckBore: given.neckBore ?? null,
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
        perMillimetre: Math.min(HIGHEST_CORD / given.section, (room - 40) / (answer.overallLength + 1)),
        isWithCorners: true,
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
        takeUp: answer.takeUp,
        consolidatedHeight: answer.consolidatedHeight,
        room,
      })}
    />
  )),
  'loaded-gap': draws<typeof loadedGap>('loaded-gap', ({ given, answer, room }) => (
    <Drawn
      drawing={loadedGapDrawing({
        gapLeft: given.gapLeft ?? null,
        gapRight: given.gapRight ?? null,
        expectedGap: given.expectedGap,
        allowed: answer.allowed,
        verdict: answer.verdict,
        room,
      })}
    />
  )),
  'top-up': draws<typeof topUp>('top-up', ({ given, room }) => <Drawn drawing={topUpDrawing({ ...given, room })} />),
}
