import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { inject, onTestFinished } from 'vitest'
import { openStore, type Store } from '../src/platform/store.ts'

let made = 0

/** A register of its own for one test, on the database this run is for. Gone when the test ends. */
export async function aDatabase(): Promise<string> {
  const { provider, base } = inject('database')
  made += 1
  if (provider === 'sqlite') {
    const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-test-'))
    const file = path.join(folder, 'register.db')
    copyFileSync(base, file)
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
    return `file:${file}`
  }
  const name = `test_${process.pid}_${made}`
  const admin = new URL(base)
  admin.pathname = '/postgres'
  await query(admin.href, `CREATE DATABASE ${name} TEMPLATE base`)
  onTestFinished(() => query(admin.href, `DROP DATABASE ${name} WITH (FORCE)`))
  const own = new URL(base)
  own.pathname = `/${name}`
  return own.href
}

export async function aStore(url?: string): Promise<Store> {
  const store = await openStore(url ?? (await aDatabase()))
  onTestFinished(() => store.close())
  return store
}

async function query(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query(sql)
  } finally {
    await client.end()
  }
}
