import { readFileSync } from 'node:fs'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'

const { version } = JSON.parse(readFileSync(`${import.meta.dirname}/package.json`, 'utf8')) as { version: string }
const api = process.env['GLANDKEEPER_API'] ?? 'http://127.0.0.1:4170'

export default defineConfig({
  root: import.meta.dirname,
  define: { 'import.meta.env.GLANDKEEPER_VERSION': JSON.stringify(version) },
  plugins: [
    react(),
    VitePWA({
      // Registered by main.tsx. A new version waits until every page of the old one is closed: nobody is reloaded at a valve.
      injectRegister: false,
      registerType: 'prompt',
      manifest: {
        name: 'Glandkeeper',
        short_name: 'Glandkeeper',
        description: 'Rounds, valves and half turns, with or without signal',
        start_url: '/rounds',
        display: 'standalone',
        background_color: '#f3ecdc',
        theme_color: '#f3ecdc',
        icons: [
          { src: '/mark-192.png', sizes: '192x192', type: 'image/png' },
          { src: '/mark-512.png', sizes: '512x512', type: 'image/png' },
          { src: '/mark-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,wasm}'],
        maximumFileSizeToCacheInBytes: 4 * 1024 * 1024,
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//, /^\/calendar\//],
        runtimeCaching: [
          {
            urlPattern: /\/api\/photos\/[0-9a-f]{64}\/thumbnail$/,
            handler: 'CacheFirst',
            options: { cacheName: 'thumbnails', expiration: { maxEntries: 400 } },
          },
        ],
      },
    }),
  ],
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
  server: {
    port: 4171,
    proxy: { '/api': { target: api, changeOrigin: false }, '/calendar/': { target: api, changeOrigin: false } },
  },
  build: { outDir: `${import.meta.dirname}/dist`, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 700 },
})
