import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const api = process.env['GLANDKEEPER_API'] ?? 'http://127.0.0.1:4170'

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  // Workspace packages are read from their sources, so a change shows without building them first. An alias and
  // not the export condition `source`: react-aria-components names that condition too, and does not ship the files.
  resolve: {
    alias: [
      {
        find: /^@glandkeeper\/(bench|contract|drawings|engines|units)\/(.+)$/,
        replacement: `${import.meta.dirname}/../../packages/$1/$2.ts`,
      },
    ],
  },
  server: { port: 4171, proxy: { '/api': { target: api, changeOrigin: false } } },
  build: { outDir: `${import.meta.dirname}/dist`, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 700 },
})
