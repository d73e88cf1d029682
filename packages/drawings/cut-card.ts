import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { mm } from '@glandkeeper/units/quantity'
import { checkRuler } from './check-ruler.ts'
import { cordDrawing } from './cord.ts'
import type { Drawing } from './drawing.ts'
import { jointsDrawing } from './joints.ts'
import { drawnGland, isToScale, missingOfBox } from './section-model.ts'
import { sectionOfCard } from './section-of-card.ts'

/** 96 px are one inch, on every screen's rule and on paper. */
export const PX_PER_MILLIMETRE = 96 / 25.4
const JOINTS_SIZE = 92
const RULER = mm(50)

export interface CardDrawings {
  readonly section: Drawing
  /** Under the section: what may be read off it. */
  readonly sectionNote: string
  readonly cord: Drawing | null
  /** The length is more than the sheet: the ends are true, the middle is left out. */
  readonly cordIsBroken: boolean
  readonly ruler: Drawing
  readonly joints: Drawing | null
}

/** All drawings of a card in px, the cord at full size when a px is printed as 1/96 inch and `room` px are there for it. */
export function cardDrawings(
  card: CutCard,
  room: { readonly section: number; readonly sectionHeight: number; readonly cord: number },
): CardDrawings {
  const expected = card.gap?.expected ?? null
  const gland = drawnGland(card.gland, { gapLeft: expected, gapRight: expected, gapIsInferred: true }, card.rings?.count ?? null)
  const cord = cordOf(card, room.cord)
  return {
    section: sectionOfCard(gland, { width: room.section, mostHeight: room.sectionHeight }),
    sectionNote: isToScale(gland)
      ? 'To scale; walls, flange and studs by proportion. The follower is dashed: where it is expected.'
      : `Not to scale: ${missingOfBox(gland).join(', ')} not measured.`,
    cord,
    cordIsBroken: cord !== null && cord.says.endsWith('drawn broken'),
    ruler: checkRuler({ length: RULER, perMillimetre: PX_PER_MILLIMETRE }),
    joints: jointsOf(card),
  }
}

function cordOf({ cut, cord }: CutCard, room: number): Drawing | null {
  if (cut === null || cord === null) return null
  return cordDrawing({ ringLength: cut.length, section: cord.space, cutAngle: cut.angle, room, perMillimetre: PX_PER_MILLIMETRE })
}

function jointsOf({ joints, gland: { boxBore, stemDiameter } }: CutCard): Drawing | null {
  if (joints.length === 0 || boxBore === null || stemDiameter === null) return null
  return jointsDrawing({ boxBore, stemDiameter, positions: joints.map(({ angle }) => angle), size: JOINTS_SIZE })
}
