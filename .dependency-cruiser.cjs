/** Who may import whom. Each rule says why in one line; a test breaks each of them once. */
module.exports = {
  forbidden: [
    { name: 'units-import-nothing', severity: 'error', comment: 'A unit knows no valve.', from: { path: '^packages/units/', pathNot: '\\.test\\.ts$' }, to: { pathNot: '^packages/units/' } },
    { name: 'engines-are-pure', severity: 'error', comment: 'Engines take numbers and give numbers: no zod, no database, no clock, no network.', from: { path: '^packages/engines/', pathNot: '\\.test\\.ts$' }, to: { pathNot: '^packages/(units|engines)/' } },
    { name: 'contract-knows-units-and-zod', severity: 'error', comment: 'Server and web share it, so it may need neither.', from: { path: '^packages/contract/', pathNot: '\\.test\\.ts$' }, to: { pathNot: '^(packages/(units|contract)/|node_modules/zod)' } },
    { name: 'web-not-server', severity: 'error', comment: 'The web knows the server by the contract only.', from: { path: '^apps/web/' }, to: { path: '^apps/server/' } },
    { name: 'server-not-web', severity: 'error', comment: 'The server serves files and does not know what is in them.', from: { path: '^apps/server/' }, to: { path: '^apps/web/' } },
    { name: 'platform-knows-no-feature', severity: 'error', comment: 'Features stand on the platform, not the other way round.', from: { path: '^apps/(server|web)/src/platform/', pathNot: '\\.test\\.tsx?$' }, to: { path: '^apps/(server|web)/src/features/' } },
    { name: 'ui-knows-no-feature', severity: 'error', comment: 'Inputs and drawings are used by features.', from: { path: '^apps/web/src/ui/', pathNot: '\\.test\\.tsx?$' }, to: { path: '^apps/web/src/(features|app)/' } },
    { name: 'server-feature-by-its-door', severity: 'error', comment: 'Another feature of the server is reached by its index.ts.', from: { path: '^apps/server/src/features/([^/]+)/', pathNot: '\\.test\\.ts$' }, to: { path: '^apps/server/src/features/(?!$1/)[^/]+/(?!index\\.ts$)' } },
    { name: 'web-feature-by-its-queries', severity: 'error', comment: 'Another feature of the web is reached by its queries or its door, not by its parts.', from: { path: '^apps/web/src/features/([^/]+)/', pathNot: '\\.test\\.tsx?$' }, to: { path: '^apps/web/src/features/(?!$1/)[^/]+/(?!queries\\.ts$|index\\.tsx?$)' } },
    { name: 'prisma-only-in-the-store', severity: 'error', comment: 'A write past the gate can be lost after it was acknowledged: docs/decisions/0002.', from: { path: '^apps/server/src/', pathNot: '(platform/(store|migrations|single-server)\\.ts$|generated/|\\.test\\.ts$)' }, to: { path: 'node_modules/(@prisma|better-sqlite3|pg)/', pathNot: '\\.test\\.ts$' } },
    { name: 'no-circles', severity: 'error', comment: 'A circle has no bottom to start reading from.', from: { pathNot: 'generated/' }, to: { circular: true, pathNot: 'generated/' } },
    { name: 'no-nameless-folders', severity: 'error', comment: 'A word without an owner: give the code the name of what it is about.', from: {}, to: { path: '^(apps|packages)/.*/(utils|helpers|common|services|types)/' } },
  ],
  options: {
    tsPreCompilationDeps: true,
    doNotFollow: { path: ['node_modules', '/dist/', '/generated/'] },
    exclude: { path: ['/\\.types/', '/dist/'] },
    tsConfig: { fileName: 'tests/tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['source', 'types', 'import', 'node', 'default'], extensions: ['.ts', '.tsx', '.mjs', '.js', '.d.ts'] },
  },
}
