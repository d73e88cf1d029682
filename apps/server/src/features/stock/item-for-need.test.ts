import { describe, expect, it } from 'vitest'
import { itemForNeed } from './item-for-need.ts'
import type { PackingNeed } from './packing-need.ts'

type Item = Parameters<typeof itemForNeed>[0][number] & { readonly name: string }

const anItem = (name: string, about: Partial<Record<keyof Item, unknown>> = {}) =>
  ({ name, kind: 'cord', family: 'graphite braid', section: 8, boxBore: null, stemDiameter: null, onHand: 5, ...about }) as Item
const cordOf = (sectionMm: number, family = 'graphite braid') => ({ kind: 'cord', family, sectionMm }) as PackingNeed
const rings: PackingNeed = {
  kind: 'die-formed ring',
  family: 'graphite die-formed',
  boxBoreMm: 44,
  stemDiameterMm: 28,
  rings: 5,
}
const found = (items: readonly Item[], need: PackingNeed) => itemForNeed(items, need)?.name ?? null

describe('the item that serves a need', () => {
  it('is a cord of the same packing and section', () => {
    const items = [
      anItem('PTFE', { family: 'PTFE braid' }),
      anItem('6.5', { section: 6.5 }),
      anItem('rings', { kind: 'die-formed ring' }),
      anItem('8'),
    ]
    expect(found(items, cordOf(8))).toBe('8')
    expect(found(items, cordOf(10))).toBeNull()
    expect(found(items, cordOf(8, 'aramid braid'))).toBeNull()
  })

  it('may have its inch section written in mm: 5/16 as 7.9 or 7.94, 1/4 as 6.3 or 6.4; 8 mm is another cord', () => {
    expect(found([anItem('7.9', { section: 7.9 })], cordOf(7.9375))).toBe('7.9')
    expect(found([anItem('7.94', { section: 7.94 })], cordOf(7.9375))).toBe('7.94')
    expect(found([anItem('6.4', { section: 6.4 })], cordOf(6.35))).toBe('6.4')
    expect(found([anItem('6.3', { section: 6.3 })], cordOf(6.35))).toBe('6.3')
    expect(found([anItem('8')], cordOf(7.9375))).toBeNull()
  })

  it('of two suppliers is the first with stock, and without any the first', () => {
    expect(found([anItem('first', { onHand: 0 }), anItem('second')], cordOf(8))).toBe('second')
    expect(found([anItem('first', { onHand: -1 }), anItem('second', { onHand: 0 })], cordOf(8))).toBe('first')
  })

  it('is pressed for the same stem and bore', () => {
    const about = { kind: 'die-formed ring', family: 'graphite die-formed', section: null }
    const other = anItem('30 in 46', { ...about, boxBore: 46, stemDiameter: 30 })
    const same = anItem('28 in 44', { ...about, boxBore: 44, stemDiameter: 28 })
    expect(found([other, same], rings)).toBe('28 in 44')
    expect(found([other, anItem('28 in 44.2', { ...about, boxBore: 44.2, stemDiameter: 28 })], rings)).toBeNull()
  })
})
