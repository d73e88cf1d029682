import type { Drawing } from './drawing.ts'
import { dimensionShapes, labelShapes } from './section-figures.ts'
import { placementOf, type Room, shapesOf } from './section-geometry.ts'
import { dimensionsOf, labelsOf } from './section-labels.ts'
import type { DrawnGland } from './section-model.ts'
import { bodyShapes, keepClearShape, stemShapes, studShapes } from './section-parts.ts'
import { sectionInWords } from './section-words.ts'

const LEAST_HEIGHT = 230
const DESK = { mostHeight: 560, gutter: 114, plainSize: 15 }
const PHONE = { mostHeight: 440, gutter: 102, plainSize: 14 }
const PHONE_WIDTH = 480

/** The stuffing box of one valve, upright and in section, with every figure known of it; in px for a width in px. */
export function sectionDrawing(gland: DrawnGland, thread: string | null, width: number): Drawing {
  const { plainSize, ...size } = width < PHONE_WIDTH ? PHONE : DESK
  const room: Room = { width, ...size }
  const place = placementOf(gland, room)
  const height = Math.max(place.height, LEAST_HEIGHT)
  const parts = { gland, place, shapes: shapesOf(gland, place) }
  return {
    width,
    height,
    says: sectionInWords(gland, thread),
    shapes: [
      ...bodyShapes(parts),
      keepClearShape(parts),
      ...studShapes(parts),
      ...stemShapes(parts),
      ...dimensionsOf(gland, place).flatMap(dimensionShapes),
      ...labelsOf(gland, place, height, thread).flatMap((label) => labelShapes(label, plainSize)),
    ],
  }
}
