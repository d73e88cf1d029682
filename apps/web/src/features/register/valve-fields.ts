import { innermost, quantities, type QuantityMeta } from '@glandkeeper/contract/quantity'
import { ValveInput } from '@glandkeeper/contract/valves'
import { z } from 'zod'

/** One field of the valve form, named by its JSON Pointer in ValveInput, as the server names it in a fault. */
export interface ValveField {
  pointer: string
  label: string
  hint?: string | undefined
  mayBeUnknown: boolean
  input:
    | { kind: 'figure'; quantity: QuantityMeta }
    | { kind: 'word'; words: readonly string[] }
    | { kind: 'yes or no' }
    | { kind: 'text'; longest: number | undefined }
}

/** What stands beside a field that is not a number; numbers bring their own label. */
const labels: Readonly<Record<string, { label: string; hint?: string }>> = {
  '/tag': { label: 'Tag', hint: 'names one valve of the site' },
  '/description': { label: 'What it seals', hint: 'as on the board: feed pump 2 discharge' },
  '/areaCode': { label: 'Area' },
  '/service': { label: 'Service', hint: 'steam, feed water, liquor' },
  '/fluid': { label: 'Fluid', hint: 'more closely, if it matters' },
  '/phase': { label: 'Phase' },
  '/valveKind': { label: 'Kind of valve' },
  '/stemMovement': { label: 'Stem movement' },
  '/isolationBoundary': { label: 'Isolation boundary', hint: 'valves isolated together share a name; empty: on its own' },
  '/isolatesOnLine': { label: 'Can be isolated while the plant runs' },
  '/access': { label: 'Access to the gland' },
  '/criticality': { label: 'Criticality' },
  '/gland/followerKind': { label: 'Follower' },
  '/gland/studThread': { label: 'Stud thread', hint: 'M12, 1/2-13 UNC, 1/2-12 BSW; empty: not known' },
  '/gland/studGrade': { label: 'Stud grade' },
  '/gland/lubrication': { label: 'Lubrication of the studs' },
}

export const groups: readonly { title: string; pointers: readonly string[] }[] = [
  { title: 'Which valve', pointers: ['/tag', '/description', '/areaCode', '/walkPosition', '/level', '/east', '/north'] },
  { title: 'What it holds', pointers: ['/service', '/fluid', '/phase', '/temperature', '/pressure'] },
  {
    title: 'How it is built and reached',
    pointers: ['/valveKind', '/stemMovement', '/access', '/criticality', '/isolationBoundary', '/isolatesOnLine'],
  },
  {
    title: 'Gland, as measured',
    pointers: [
      '/gland/stemDiameter',
      '/gland/boxBore',
      '/gland/boxDepth',
      '/gland/followerKind',
      '/gland/noseLength',
      '/gland/leastEngagement',
      '/gland/keepClear',
    ],
  },
  { title: 'Studs', pointers: ['/gland/studThread', '/gland/studCount', '/gland/studGrade', '/gland/lubrication'] },
]

/** Every field there is, read from the contract, so that a new one cannot be forgotten here without a fault. */
export const valveFields: ReadonlyMap<string, ValveField> = new Map(
  leavesOf(ValveInput, '').map((field) => [field.pointer, field]),
)

function leavesOf(schema: z.ZodObject, root: string): ValveField[] {
  return Object.entries<z.core.$ZodType>(schema.shape).flatMap(([name, part]) => {
    const pointer = `${root}/${name}`
    return part instanceof z.ZodObject ? leavesOf(part, pointer) : [fieldOf(pointer, part)]
  })
}

function fieldOf(pointer: string, schema: z.core.$ZodType): ValveField {
  const inner = innermost(schema)
  const quantity = quantities.get(inner)
  const label = quantity?.label ?? labels[pointer]?.label
  if (label === undefined) throw new Error(`the valve form has no label for ${pointer}`)
  return {
    pointer,
    label,
    hint: labels[pointer]?.hint,
    mayBeUnknown: schema instanceof z.ZodNullable,
    input: inputOf(inner, quantity),
  }
}

function inputOf(schema: z.core.$ZodType, quantity: QuantityMeta | undefined): ValveField['input'] {
  if (quantity) return { kind: 'figure', quantity }
  if (schema instanceof z.ZodEnum) return { kind: 'word', words: schema.options.map(String) }
  if (schema instanceof z.ZodBoolean) return { kind: 'yes or no' }
  return { kind: 'text', longest: schema instanceof z.ZodString ? (schema.maxLength ?? undefined) : undefined }
}
