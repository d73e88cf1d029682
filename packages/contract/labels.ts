import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { everybody } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

/** Width and height of one label in millimetres. */
export const LabelSize = z.enum(['105 x 57', '70 x 37', '48 x 25'])
export type LabelSize = z.infer<typeof LabelSize>

/** How they lie on a sheet of A4: edge to edge, the whole block in the middle. Sides in millimetres. */
export const labelGrids = {
  '105 x 57': { columns: 2, rows: 5, width: 105, height: 57 },
  '70 x 37': { columns: 3, rows: 8, width: 70, height: 37 },
  '48 x 25': { columns: 4, rows: 11, width: 48, height: 25 },
} as const satisfies Record<LabelSize, object>

/** More at once take longer to print than anybody waits at a page. */
export const mostLabels = 500

/** No tag has a comma in it. */
const Tags = z
  .string()
  .max(12_000, 'at most 12000 letters of tags')
  .transform((list) => list.split(','))
  .pipe(z.array(ValveTag).max(mostLabels, `at most ${mostLabels} tags`))

/** Labels in walking order, each with the tag and a code that opens the valve: `/v/` and the tag, on the server asked. */
export const printLabels = endpoint({
  method: 'GET',
  path: '/api/labels.pdf',
  who: everybody,
  query: z.strictObject({
    size: LabelSize.default('70 x 37'),
    area: AreaCode.optional(),
    find: text(60).optional(),
    tags: Tags.optional(),
  }),
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})
