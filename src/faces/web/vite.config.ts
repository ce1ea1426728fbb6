import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { shellWorker } from './shell/shell-plugin.ts';

/** The page: built to dist/web and served by the workshop's own server; nothing is fetched from anywhere else. */
export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  plugins: [react(), shellWorker()],
  build: {
    outDir: '../../../dist/web',
    emptyOutDir: true,
    // What a five-year-old phone has, and the tablets that stopped being renewed then; the methods it lacks: older-browsers.ts.
    target: ['es2020', 'chrome87', 'firefox78', 'safari14'],
    // No inlined data: addresses, so that the server's content policy can stay at 'self'.
    assetsInlineLimit: 0,
  },
  server: { host: '127.0.0.1', proxy: { '/api': `http://127.0.0.1:${process.env.WAYWRIGHT_PORT ?? 4747}` } },
});
