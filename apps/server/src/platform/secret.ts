import { randomBytes } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** The key that signs cookies, made once and kept readable by the server's account only. */
export function secretIn(dataFolder: string): string {
  mkdirSync(dataFolder, { recursive: true })
  const file = path.join(dataFolder, 'secret')
  try {
    // `wx` fails when the file is there: two starts at once cannot make two secrets.
    writeFileSync(file, randomBytes(48).toString('base64url'), { flag: 'wx', mode: 0o600 })
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  }
  return readFileSync(file, 'utf8')
}
