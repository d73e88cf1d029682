import type { Read } from '../../platform/store.ts'

/** Which of these movements have been taken back. */
export async function takenBackOf(
  read: Pick<Read, 'stockMovement'>,
  siteId: string,
  ids: readonly string[],
): Promise<ReadonlySet<string | null>> {
  const rows = await read.stockMovement.findMany({
    where: { siteId, kind: 'taken back', corrects: { in: [...ids] } },
    select: { corrects: true },
  })
  return new Set(rows.map(({ corrects }) => corrects))
}
