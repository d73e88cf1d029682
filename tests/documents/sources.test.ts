import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { sources } from '@glandkeeper/engines/sources'
import { expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const place = path.join(folder, entry.name)
    if (entry.isDirectory()) return entry.name === 'dist' ? [] : filesIn(place)
    return entry.name.endsWith('.ts') && !/\.test\.ts$|sources\.ts$/.test(entry.name) ? [place] : []
  })

const cited = ['packages/engines', 'packages/bench'].flatMap((folder) =>
  filesIn(path.join(root, folder)).flatMap((file) => citationsIn(readFileSync(file, 'utf8'))),
)

/** `SRC-600 to SRC-602` cites three. */
function citationsIn(text: string): string[] {
  const ranges = [...text.matchAll(/SRC-(\d+) to SRC-(\d+)/g)].flatMap(([, from, to]) =>
    Array.from({ length: Number(to) - Number(from) + 1 }, (_, index) => `SRC-${Number(from) + index}`),
  )
  return [...ranges, ...(text.match(/SRC-\d+/g) ?? [])]
}

it('every source cited is listed once, with what it is and how far it is to be trusted', () => {
  const ids = sources.map((source) => source.id as string)
  expect([...new Set(cited)].filter((id) => !ids.includes(id))).toEqual([])
  expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
  expect(cited.length).toBeGreaterThan(100)
})

it('every listed source is used somewhere', () => {
  expect(sources.map(({ id }) => id).filter((id) => !cited.includes(id))).toEqual([])
})

it('docs/sources.md shows the same list', async () => {
  const document = readFileSync(path.join(root, 'docs/sources.md'), 'utf8')
  const rows = sources
    .toSorted((a, b) => Number(a.id.slice(4)) - Number(b.id.slice(4)))
    .map(({ id, what, source, mark }) => `| ${id} | ${what} | ${source} | ${mark} |`)
  const wanted = document.replace(/(\|---\|---\|---\|---\|\n)(\|.*\n)*/, `$1${rows.join('\n')}\n`)
  // `npx vitest run --project unit tests/documents/sources --update` writes it anew.
  await expect(wanted).toMatchFileSnapshot(path.join(root, 'docs/sources.md'))
})
