import { innermost, quantities, type QuantityMeta } from '@glandkeeper/contract/quantity'
import { nameInWords } from '@glandkeeper/units/format'
import { z } from 'zod'
import { capital } from '../../ui/sentence.ts'

/** How one input of a calculator is typed in, read off its schema. */
export type BenchField = { readonly name: string; readonly isOptional: boolean } & (
  | { readonly kind: 'figure'; readonly meta: QuantityMeta }
  | { readonly kind: 'figures'; readonly meta: QuantityMeta }
  | { readonly kind: 'choice'; readonly words: readonly string[]; readonly label: string }
  | { readonly kind: 'yes or no'; readonly label: string }
  | { readonly kind: 'text'; readonly label: string }
)

/** @example fieldsOf(z.object({ boxBore })) // → [{ name: 'boxBore', kind: 'figure', … }] */
export function fieldsOf(schema: z.ZodObject): BenchField[] {
  return Object.entries(schema.shape as Readonly<Record<string, z.core.$ZodType>>).map(([name, field]) => {
    const inner = innermost(field)
    const shared = { name, isOptional: field instanceof z.ZodOptional || field instanceof z.ZodNullable }
    const meta = quantities.get(inner)
    if (meta) return { ...shared, kind: 'figure', meta }
    if (inner instanceof z.ZodArray) {
      const element = quantities.get(innermost(inner.element))
      if (element) return { ...shared, kind: 'figures', meta: element }
    }
    const label = (inner instanceof z.ZodType ? inner.meta()?.title : undefined) ?? inWords(name)
    if (inner instanceof z.ZodEnum) return { ...shared, kind: 'choice', words: inner.options.map(String), label }
    if (inner instanceof z.ZodBoolean) return { ...shared, kind: 'yes or no', label }
    return { ...shared, kind: 'text', label }
  })
}

/** @example inWords('studThread') // → 'Stud thread' */
export function inWords(name: string): string {
  return capital(nameInWords(name))
}

export function labelOf(field: BenchField): string {
  return field.kind === 'figure' || field.kind === 'figures' ? field.meta.label : field.label
}
