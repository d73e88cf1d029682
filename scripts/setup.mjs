// What every command needs before its own work: a Node that is new enough, the packages of the lock file,
// the generated database clients and, where asked, a build that is not older than its sources.
// Built-ins only: it runs before anything is installed.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'

export const root = path.resolve(import.meta.dirname, '..')
const stamps = path.join(root, '.build')
const LEAST_NODE = [20, 19]
/** From here on Node aborts when it clears away a statement of better-sqlite3 12; 13 needs Node 22. See docs/decisions/0014. */
const ABORTING_NODE = [24, 19]

export function say(line) {
  console.log(`glandkeeper: ${line}`)
}

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  const isBefore = ([otherMajor, otherMinor]) => major < otherMajor || (major === otherMajor && minor < otherMinor)
  if (!isBefore(LEAST_NODE) && isBefore(ABORTING_NODE)) return
  const wanted = `${LEAST_NODE.join('.')} or newer, and older than ${ABORTING_NODE.join('.')}`
  console.error(`glandkeeper: this is Node ${process.versions.node}; ${wanted} is needed (22 is a good choice)`)
  process.exit(1)
}

/** Runs a program of ours or of a package; ends this one when it fails. */
function run(args, options = {}) {
  const result = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit', ...options })
  if (result.status !== 0) process.exit(result.status ?? 1)
}

/** Installs what the lock file says, unless that is what is there. */
export function ensureInstalled() {
  // And for this Node: a native package built for another one does not load.
  const wanted = `${hashOfFiles([path.join(root, 'package-lock.json')])} ${process.versions.modules}`
  if (existsSync(path.join(root, 'node_modules')) && readStamp('installed') === wanted) return
  say('installing packages, one to three minutes the first time')
  // Through the npm that started us where there is one: on Windows its name alone cannot be started.
  const npm = process.env.npm_execpath
  const arguments_ = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']
  const result = npm
    ? spawnSync(process.execPath, [npm, ...arguments_], { cwd: root, stdio: 'inherit' })
    : spawnSync('npm', arguments_, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })
  if (result.status !== 0) {
    console.error('glandkeeper: the packages could not be installed; the lines above say why')
    process.exit(1)
  }
  writeStamp('installed', wanted)
}

const bin = (name, file) => path.join(root, 'node_modules', name, file)

const builds = {
  clients: {
    says: 'generating the database clients',
    from: ['prisma/schema.prisma', 'prisma/postgresql/schema.prisma', 'prisma.config.ts', 'package-lock.json'],
    to: 'apps/server/src/generated/postgresql/client.ts',
    make: () => {
      const generate = [bin('prisma', 'build/index.js'), 'generate']
      run(generate, { stdio: ['ignore', 'ignore', 'inherit'] })
      run(generate, {
        stdio: ['ignore', 'ignore', 'inherit'],
        env: { ...process.env, GLANDKEEPER_SCHEMA: 'prisma/postgresql/schema.prisma' },
      })
    },
  },
  server: {
    says: 'compiling the server',
    from: [
      'packages',
      'apps/server/src',
      'apps/server/package.json',
      'apps/server/tsconfig.json',
      'tsconfig.base.json',
      'package-lock.json',
    ],
    to: 'apps/server/dist/main.js',
    make: () => run([bin('typescript7', 'bin/tsc'), '-b', 'apps/server']),
  },
  web: {
    says: 'building the pages',
    from: [
      'packages',
      'apps/web/src',
      'apps/web/public',
      'apps/web/index.html',
      'apps/web/vite.config.ts',
      'apps/web/package.json',
      'package-lock.json',
    ],
    to: 'apps/web/dist/index.html',
    make: () => run([bin('vite', 'bin/vite.js'), 'build', 'apps/web', '--logLevel', 'warn']),
  },
}

/** Makes what is missing or older than its sources. */
export function ensureBuilt(...names) {
  for (const name of names) {
    const { says, from, to, make } = builds[name]
    const wanted = hashOfFiles(from.map((part) => path.join(root, part)))
    if (existsSync(path.join(root, to)) && readStamp(name) === wanted) continue
    say(says)
    make()
    writeStamp(name, wanted)
  }
}

/** Content, not dates: a fresh clone has new dates and may have old builds. */
function hashOfFiles(places) {
  const hash = createHash('sha256')
  for (const file of places.flatMap(filesUnder))
    hash.update(path.relative(root, file)).update('\0').update(readFileSync(file)).update('\0')
  return hash.digest('hex')
}

const MADE = new Set(['dist', 'generated', 'node_modules', '.types'])

function filesUnder(place) {
  if (!existsSync(place)) return []
  if (statSync(place).isFile()) return /\.test\.tsx?$|\.tsbuildinfo$/.test(place) ? [] : [place]
  return readdirSync(place)
    .toSorted()
    .filter((name) => !MADE.has(name))
    .flatMap((name) => filesUnder(path.join(place, name)))
}

function readStamp(name) {
  const file = path.join(stamps, `${name}.stamp`)
  return existsSync(file) ? readFileSync(file, 'utf8') : ''
}

function writeStamp(name, value) {
  mkdirSync(stamps, { recursive: true })
  writeFileSync(path.join(stamps, `${name}.stamp`), value)
}
