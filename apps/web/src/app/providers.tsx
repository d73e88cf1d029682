import { QueryClientProvider } from '@tanstack/react-query'
import { I18nProvider } from 'react-aria-components'
import { RouterProvider } from 'react-router/dom'
import { queryClient } from '../platform/query.ts'
import { router } from './router.tsx'

export function Providers() {
  return (
    <I18nProvider locale="en-GB">
      <QueryClientProvider client={queryClient}>
        <RouterProvider router={router} />
      </QueryClientProvider>
    </I18nProvider>
  )
}
