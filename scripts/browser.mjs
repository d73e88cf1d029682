// Finds a browser for the browser tests: one that is set, on the PATH, installed where browsers are, or Playwright's own.
// On Debian as root it installs the distribution's Chromium.
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'
import { say } from './setup.mjs'

// The shell is the same browser without its windows: the tests take a tenth less with it.
const names = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
]
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

export async function findBrowser() {
  const found = process.env.GLANDKEEPER_BROWSER ?? onPath() ?? places.find(existsSync) ?? (await playwrightsOwn()) ?? installed()
  if (found) return found
  console.error(
    'glandkeeper: no browser was found for the browser tests. Install Chromium or Chrome, or name one in GLANDKEEPER_BROWSER.',
  )
  process.exit(1)
}

function onPath() {
  const folders = (process.env.PATH ?? '').split(path.delimiter)
  return names.flatMap((name) => folders.map((folder) => path.join(folder, name))).find(existsSync)
}

async function playwrightsOwn() {
  const { chromium } = await import('playwright-core')
  const own = chromium.executablePath()
  return own && existsSync(own) ? own : undefined
}

function installed() {
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0) return undefined
  say('installing Chromium from the distribution, for the browser tests')
  const wait = ['-o', 'DPkg::Lock::Timeout=600']
  const apt = (...args) =>
    spawnSync('apt-get', args, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
  apt('update', '-qq', ...wait)
  const install = (browser) =>
    apt('install', '-y', '-qq', '--no-install-recommends', ...wait, browser, 'fonts-dejavu-core', 'fonts-liberation')
  // An older distribution has no shell by itself.
  if (install('chromium-headless-shell').status !== 0) install('chromium')
  return onPath()
}
