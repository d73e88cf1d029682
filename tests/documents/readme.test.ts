import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const read = (file: string) => readFileSync(path.join(root, file), 'utf8')
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> }

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (file) => {
  const text = read(file)

  it('names commands that exist', () => {
    const named = [...text.matchAll(/npm (?:run )?([a-z][\w:]*)/g)]
      .map(([, command]) => command!)
      .filter((command) => !['run'].includes(command))
    expect(named.length).toBeGreaterThan(2)
    expect(named.filter((command) => !(command in scripts))).toEqual([])
  })

  it('names files that exist', () => {
    const named = [
      ...text.matchAll(/`((?:apps|packages|prisma|tests|scripts|docs|platform|features)\/[\w./-]+\.\w+)`|\]\(([\w./-]+)\)/g),
    ].map(([, code, link]) => (code ?? link)!)
    const homes = ['', 'apps/server/src', 'apps/web/src']
    expect(named.length).toBeGreaterThan(4)
    expect(named.filter((name) => !homes.some((home) => existsSync(path.join(root, home, name))))).toEqual([])
  })
})

it('decisions are numbered without a gap, dated and decided', () => {
  const files = readdirSync(path.join(root, 'docs/decisions')).toSorted()
  files.forEach((file, index) => {
    expect(file.slice(0, 4)).toBe(String(index + 1).padStart(4, '0'))
    expect(read(`docs/decisions/${file}`)).toMatch(/^# \d{4} .+\n\n\d{4}-\d{2}-\d{2}, (accepted|superseded)/)
  })
  expect(files.length).toBeGreaterThan(5)
})
