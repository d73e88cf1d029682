import { expect, it } from 'vitest'
import { badRowsCsv } from './bad-rows.ts'
import { rowFault } from './judge.ts'

const column = (heading: string, field: string | null = null) => ({ heading, field, unit: null })
const raw = (row: number, ...cells: string[]) => ({ row, cells })

it('lets others have their turn while a long file is made', async () => {
  const rows = Array.from({ length: 20_000 }, (_, n) => ({ raw: raw(n + 2, 'A', 'x'), faults: [], occurrence: null }))
  let turns = 0
  const count = () => {
    turns += 1
    counting = setImmediate(count)
  }
  let counting = setImmediate(count)
  const made = await badRowsCsv('valves', [column('tag', 'tag'), column('what')], rows)
  clearImmediate(counting)
  expect(turns).toBeGreaterThan(20)
  expect(made.toString().trim().split('\n')).toHaveLength(20_001)
})

it('guards headings and reasons from being run as formulas, as it does cells', async () => {
  const rows = [{ raw: raw(2, '-12.5'), faults: [rowFault(raw(2), '=1+2', '', 'not a number')], occurrence: null }]
  const made = await badRowsCsv('valves', [column('=1+2')], rows)
  expect(made.toString('utf8').slice(1)).toBe("'=1+2,why this row was not read\n-12.5,'=1+2: not a number\n")
})

it('says which of several alike a row of a history is, once', async () => {
  const columns = [column('tag', 'tag'), column('Occurrence', 'occurrence'), column('why this row was not read')]
  const made = await badRowsCsv('history', columns, [{ raw: raw(2, 'A', '1', 'old'), faults: [], occurrence: 2 }])
  expect(made.toString('utf8').slice(1)).toBe('tag,which of several alike,why this row was not read\nA,2,\n')
})

it('shows the start of a long cell only', () => {
  expect(rowFault(raw(2), 'note', 'n'.repeat(1000), 'too long').value).toHaveLength(100)
})
