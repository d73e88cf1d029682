import { QueryCache, QueryClient } from '@tanstack/react-query'
import { ProblemError } from './client.ts'

/** The answer to "who is signed in": a person, or null for nobody. */
export const sessionKey = ['session'] as const

function isNotSignedIn(error: unknown): boolean {
  return error instanceof ProblemError && error.problem.code === 'person/not-signed-in'
}

export const queryClient = new QueryClient({
  queryCache: new QueryCache({
    // A session that ends while a page is open: the shell sees nobody and asks for a sign-in.
    onError: (error) => {
      if (isNotSignedIn(error)) queryClient.setQueryData(sessionKey, null)
    },
  }),
  defaultOptions: {
    queries: {
      staleTime: 15_000,
      // A browser's word on being online is a hint: asked for anyway, a page says at once that nobody answers.
      networkMode: 'always',
      // A problem the server named stays a problem; only silence is worth asking again.
      retry: (failures, error) =>
        navigator.onLine && !(error instanceof ProblemError && error.problem.status < 500) && failures < 3,
    },
    mutations: { networkMode: 'always' },
  },
})
