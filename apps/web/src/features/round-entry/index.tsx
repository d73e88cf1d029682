/** Where the paper of a round is typed in. */
export function typeInAddress(roundId: string): string {
  return `/rounds/${roundId}/type-in`
}
