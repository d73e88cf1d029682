import { importColumns } from '@glandkeeper/contract/import-columns'
import { expect, test } from 'vitest'
import { gapsIn, readAs, templateOf, unitsFor } from './column-readings.ts'

const reading = (heading: string, field: string | null, unit: string | null = null) => ({ heading, field, unit })
const valveColumn = (field: string) => importColumns.valves.find((column) => column.field === field)

test('a needed column that no heading is read as is missing', () => {
  const readings = [reading('Tag', 'tag'), reading('Unit', 'areaCode'), reading('State', 'phase'), reading('Duty', null)]
  expect(gapsIn('valves', readings).missing).toEqual(['service'])
})

test('a field read from two headings is told', () => {
  const readings = [reading('Date', 'takenAt'), reading('Time', 'takenAt'), reading('Tag', 'tag'), reading('Work', 'kind')]
  expect(gapsIn('history', readings)).toEqual({ missing: [], doubled: ['taken at'] })
})

test('columns left out are never read twice', () => {
  expect(gapsIn('history', [reading('a', null), reading('b', null)]).doubled).toEqual([])
})

test('a length may come in inches, a text has no unit', () => {
  expect(unitsFor(valveColumn('boxBore'))).toEqual(['mm', 'in'])
  expect(unitsFor(valveColumn('tag'))).toEqual([])
})

test('a heading read as another length keeps its unit, as a text loses it', () => {
  expect(readAs(reading('Bore', 'boxBore', 'in'), 'boxDepth', 'valves').unit).toBe('in')
  expect(readAs(reading('Bore', 'boxBore', 'in'), 'fluid', 'valves').unit).toBeNull()
  expect(readAs(reading('Bore', 'boxBore', 'in'), 'temperature', 'valves').unit).toBe('°C')
})

test('the template is one line with every column of its kind', () => {
  const [line = '', rest] = templateOf('valves').split('\r\n')
  expect(line.split(',')).toHaveLength(importColumns.valves.length)
  expect(line).toContain('box bore [mm]')
  expect(rest).toBe('')
})
