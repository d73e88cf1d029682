import { confirmSetting, listSettings, type SettingKey } from '@glandkeeper/contract/settings'
import { queryOptions, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

// Words without a component, for features and tests that need no inputs.
export { figureInWords, readTyped } from './figure-words.ts'

export const siteSettings = queryOptions({
  queryKey: ['settings'],
  queryFn: ({ signal }) => call(listSettings, { signal }),
})

/** Puts a figure on the site's word; everything computed with it is read again. */
export function useConfirmSetting() {
  const queries = useQueryClient()
  return async (key: SettingKey, seen: number, value: number) => {
    try {
      await call(confirmSetting, { params: { key }, body: { seen, value } })
    } finally {
      // After a refusal too: somebody else may have changed it, and the page must show what holds now.
      await queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'session' })
    }
  }
}
