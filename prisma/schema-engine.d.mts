export function sqlBetween(provider: 'sqlite' | 'postgresql', from: string | null, to: string): Promise<string>
export function driftOf(provider: 'sqlite' | 'postgresql', folder: string, schema: string, url: string): Promise<string>
