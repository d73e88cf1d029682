// npm start: from a fresh clone to a running server, doing only what is not done yet.
// `npm start -- --https` serves over https with a certificate made for trial; `--cert FILE --key FILE` with one given.
import path from 'node:path'
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

readOptions(process.argv.slice(2))
checkNode()
ensureInstalled()
ensureBuilt('clients', 'server', 'web')
await import('../apps/server/dist/main.js')

/** The options as settings of the environment, which is where the server reads them. */
function readOptions(options) {
  const valueOf = (name) => {
    const at = options.indexOf(name)
    const value = at < 0 ? undefined : options[at + 1]
    if (at >= 0 && (value === undefined || value.startsWith('--'))) stop(`${name} needs the name of a file`)
    return value && path.resolve(value)
  }
  const [cert, key] = [valueOf('--cert'), valueOf('--key')]
  const strange = options.find(
    (option, at) => !['--https', '--cert', '--key'].includes(option) && !/^--(cert|key)$/.test(options[at - 1]),
  )
  if (strange) stop(`npm start knows --https, --cert FILE and --key FILE, not ${strange}`)
  if (Boolean(cert) !== Boolean(key)) stop('--cert and --key go together')
  if (cert && !options.includes('--https')) stop('--cert and --key are for --https')
  if (!options.includes('--https')) return
  process.env.GLANDKEEPER_HTTPS = cert ? 'given' : 'self-made'
  if (cert) Object.assign(process.env, { GLANDKEEPER_CERT: cert, GLANDKEEPER_KEY: key })
}

function stop(fault) {
  console.error(`glandkeeper: ${fault}`)
  process.exit(2)
}
