import { type ForecastsOf, showCalibration } from '@glandkeeper/contract/calibration'
import { askForFit, showFit } from '@glandkeeper/contract/forecasts'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

const LOOK_AGAIN_MS = 700

/** What the forecasts rest on; looked at again while the program learns. */
export const presentFit = queryOptions({
  queryKey: ['fit'],
  queryFn: ({ signal }) => call(showFit, { signal }),
  refetchInterval: ({ state }) => ((state.data?.running ?? null) === null ? false : LOOK_AGAIN_MS),
})

/** How forecasts turned out. With another fit the answer is another, so it is read again. */
export function calibrationOf(of: ForecastsOf, fittedAt: string | null) {
  return queryOptions({
    queryKey: ['calibration', of, fittedAt],
    queryFn: ({ signal }) => call(showCalibration, { query: { of }, signal }),
  })
}

export function useLearnAnew() {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: () => call(askForFit),
    onSuccess: (shown) => queries.setQueryData(presentFit.queryKey, shown),
  })
}
