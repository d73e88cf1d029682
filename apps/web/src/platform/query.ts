import { QueryClient } from '@tanstack/react-query'
import { ProblemError } from './client'

/** A problem the server named stays a problem; only silence is worth asking again. */
export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 15_000,
      retry: (failures, error) => !(error instanceof ProblemError && error.problem.status < 500) && failures < 3,
    },
  },
})
