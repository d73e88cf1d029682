import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { comparePackings } from '@glandkeeper/contract/packing-lives'
import { comparisonSentence } from '@glandkeeper/engines/packing/lives/sentence'
import type { Read } from '../../platform/store.ts'
import { type ComparedLives, keyOfLives, newestStudy, wordsFor } from '../leak-study/index.ts'

/** How long packings last in a service and a band of heat, from the newest study. */
export async function packingsCompared(
  read: Pick<Read, 'leakStudy'>,
  siteId: string,
  { service = null, heat }: Omit<QueryOf<typeof comparePackings>, 'service'> & { readonly service?: string | null | undefined },
): Promise<OkIn<typeof comparePackings>> {
  const study = await newestStudy(read, siteId)
  if (study === null) return { madeAt: null, services: [], ...nothingKnown('The entries have not been gone through yet.') }
  const { madeAt, body } = study
  const text = body.lives[keyOfLives(service, heat)]
  const compared =
    text === undefined ? nothingKnown(sentenceOfNone(wordsFor(service, heat))) : (JSON.parse(text) as ComparedLives)
  return { madeAt: madeAt.toISOString(), services: [...body.services], ...compared }
}

function nothingKnown(sentence: string): ComparedLives {
  return { packings: [], leftOut: 0, notSeenSince: 0, logRank: null, sentence }
}

function sentenceOfNone(service: string): string {
  return comparisonSentence({ confidence: 0.95, groups: [], difference: null }, { service })
}
