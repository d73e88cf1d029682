import { type DrawnGland, heightOfPacking, type Measure } from './section-model.ts'

/** The drawing for somebody who cannot see it: every figure it shows, or that it is not measured. */
export function sectionInWords(gland: DrawnGland, thread: string | null): string {
  const said = (measure: Measure, value: number) =>
    `${measure} ${gland.assumed.has(measure) ? 'not measured' : `${Number(value.toFixed(1))} mm`}`
  const heightIsKnown = !(['depth', 'nose', 'gap left', 'gap right'] as const).some((measure) => gland.assumed.has(measure))
  const rings = gland.assumed.has('rings') ? 'ring count not recorded' : `${gland.rings} rings`
  return [
    `Section of the stuffing box: ${said('bore', gland.bore)}`,
    said('stem', gland.stem),
    said('depth', gland.depth),
    heightIsKnown ? `${rings}, ${Number(heightOfPacking(gland).toFixed(1))} mm high` : rings,
    said('nose', gland.nose),
    said('gap left', gland.gapLeft),
    said('gap right', gland.gapRight),
    ...(gland.gapIsInferred ? ['gaps worked out from turns'] : []),
    `keep clear ${gland.keepClear} mm`,
    `studs ${thread ?? 'not recorded'}`,
  ].join(', ')
}
