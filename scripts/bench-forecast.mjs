// npm run bench:forecast: the large simulation of the forecast, and what forecasts and the fit of priors cost.
// Prints tables and writes .build/bench-forecast.json. `-- --lives 2000` for a smaller one; `-- --only cost` for one half.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../tests/load/bench-forecast.mjs')
