import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const api = process.env['GLANDKEEPER_API'] ?? 'http://127.0.0.1:4170'

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  // Workspace packages are read from their sources, so a change shows without building them first.
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  server: { port: 4171, proxy: { '/api': api } },
  build: { target: 'es2022', chunkSizeWarningLimit: 700 },
})
