export function derivePostgresql(schema: string): string
