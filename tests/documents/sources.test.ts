import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const sources = readFileSync(path.join(root, 'docs/sources.md'), 'utf8')
const listed = [...sources.matchAll(/^\| (SRC-\d+) \| (.+?) \| (.+?) \| (.+?) \|$/gm)].map(([, id, what, source, mark]) => ({
  id: id!,
  what,
  source,
  mark: mark!,
}))

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const place = path.join(folder, entry.name)
    if (entry.isDirectory()) return entry.name === 'dist' ? [] : filesIn(place)
    return entry.name.endsWith('.ts') && !entry.name.endsWith('.test.ts') ? [place] : []
  })

const cited = filesIn(path.join(root, 'packages/engines')).flatMap((file) => readFileSync(file, 'utf8').match(/SRC-\d+/g) ?? [])

it('every source cited in the engines is listed once, with what it is and how far it is to be trusted', () => {
  const ids = listed.map((row) => row.id)
  expect([...new Set(cited)].filter((id) => !ids.includes(id))).toEqual([])
  expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
  expect(cited.length).toBeGreaterThan(5)
})

it('every listed source is used, and marked as read, worked out, from memory, or common practice', () => {
  expect(listed.map((row) => row.id).filter((id) => !cited.includes(id))).toEqual([])
  for (const { mark } of listed) expect(['read', 'worked out', 'from memory', 'common practice, no source']).toContain(mark)
})
