import { importColumns } from '@glandkeeper/contract/import-columns'
import type { ImportKind } from '@glandkeeper/contract/imports'
import { describe, expect, it } from 'vitest'
import { readCell } from './read-cell.ts'

function read(kind: ImportKind, field: string, cell: string, unit: string | null = null): unknown {
  const column = importColumns[kind].find((candidate) => candidate.field === field)!
  const reading = readCell(cell, column, unit, 'Europe/London')
  return 'fault' in reading ? reading.fault : reading.value
}

describe('a figure', () => {
  it.each([
    ['temperature', '10,000', 'write 10000 or 10.0'],
    ['boxBore', '1,250', 'write 1250 or 1.25'],
    ['temperature', '1.500', 'write 1500 or 1.5'],
    ['temperature', '1.125', 'write 1125 or 1.12'],
  ])('of %s that may mean thousands is asked about: %s', (field, cell, fault) => {
    expect(read('valves', field, cell)).toBe(fault)
  })

  it('counted in whole things is asked about in a history too', () => {
    expect(read('history', 'screeningValue', '1.500')).toBe('write 1500 or 1.5')
  })

  it.each([
    ['boxBore', '1.125', 'in', 28.575],
    ['boxBore', '12,5', null, 12.5],
    ['boxBore', '0,125', null, 0.125],
    ['boxBore', '28.575', null, 28.575],
    ['temperature', '1.5', null, 1.5],
    ['temperature', '1500', null, 1500],
  ])('of %s that can be meant in one way is read: %s', (field, cell, unit, value) => {
    expect(read('valves', field, cell, unit)).toBe(value)
  })
})

describe('a moment', () => {
  it.each([
    ['2026-05-04 14:75', 'no such time'],
    ['2026-05-04 23:75', 'no such time'],
    ['2026-05-04 14:30:99', 'no such time'],
    ['2026-05-04 24:00', 'no such time'],
    ['2026-05-04T14:75Z', 'no such time'],
    ['2026-02-30', 'no such date'],
    ['2026-02-30T10:00Z', 'no such date'],
    ['2026-13-01', 'no such date'],
    ['0076-05-04', 'no such date'],
    ['0076-05-04T10:00Z', 'no such date'],
    ['2026-05-04T10:00+25:00', 'no such time zone'],
    ['2026-03-29 01:30', 'no such time: the clocks at the site went forward'],
  ])('that is none is refused: %s', (cell, fault) => {
    expect(read('history', 'takenAt', cell)).toBe(fault)
  })

  it.each([
    ['2026-05-04', '2026-05-04T11:00:00.000Z'],
    ['2026-05-04 14:30', '2026-05-04T13:30:00.000Z'],
    ['2026-05-04T14:30:15.250Z', '2026-05-04T14:30:15.250Z'],
    ['2026-05-04 14:30 +0200', '2026-05-04T12:30:00.000Z'],
    ['2026-05-04T00:30-05:00', '2026-05-04T05:30:00.000Z'],
  ])('is read: %s', (cell, moment) => {
    expect(read('history', 'takenAt', cell)).toBe(moment)
  })
})

it('a word that every object knows is no kind of entry', () => {
  expect(read('history', 'kind', 'constructor')).toContain('not one of')
  expect(read('history', 'kind', 'Nip')).toBe('gland.nipped')
})
