import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { TestProject } from 'vitest/node'
import { systemClock } from '../src/platform/clock.ts'
import { buildWorker } from './built-worker.ts'
import { migrateSqlite } from '../src/platform/migrations.ts'

/** Migrates one register; each test works on a copy of the file. */
export default async function setup(project: TestProject): Promise<() => void> {
  buildWorker()
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-'))
  const file = path.join(folder, 'base.db')
  await migrateSqlite(file, path.resolve(import.meta.dirname, '../../../prisma'), systemClock)
  project.provide('database', { provider: 'sqlite', base: file })
  return () => rmSync(folder, { recursive: true, force: true })
}

export interface TestDatabase {
  readonly provider: 'sqlite' | 'postgresql'
  /** SQLite: the file to copy. PostgreSQL: the address of the template database. */
  readonly base: string
}

declare module 'vitest' {
  interface ProvidedContext {
    database: TestDatabase
  }
}
