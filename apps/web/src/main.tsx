// First, so that the style of each part stands over the look they share.
import './ui/look.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { Providers } from './app/providers.tsx'
import { startTheme } from './app/theme.ts'
import { outbox } from './platform/outbox/outbox.ts'

startTheme()
outbox.start()
if (import.meta.env.PROD && 'serviceWorker' in navigator) void navigator.serviceWorker.register('/sw.js')

const root = document.getElementById('root')
if (!root) throw new Error('index.html has no #root')
createRoot(root).render(
  <StrictMode>
    <Providers />
  </StrictMode>,
)
