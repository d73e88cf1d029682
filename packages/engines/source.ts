/** Where a formula or a value comes from, and how far it is to be trusted. docs/sources.md shows the same list. */
export interface Source {
  readonly id: `SRC-${number}`
  readonly what: string
  readonly source: string
  readonly mark: 'read' | 'worked out' | 'from memory' | 'common practice, no source' | 'set by us'
}
