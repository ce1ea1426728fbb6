import { defineConfig } from 'vite';

/**
 * The command line in a few files instead of the several hundred it is written in and leans on: Node reads each module from the
 * disk by itself, and that took longer than most verbs take to answer. What has binaries or data files of its own stays outside.
 */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: ['commander', 'd3-array', 'jsonc-parser', 'kysely', 'ml-matrix', 'papaparse', 'zod'] },
  build: {
    ssr: 'src/faces/cli/main.ts',
    outDir: 'dist/faces/cli',
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    sourcemap: true,
    license: { fileName: 'licences.md' },
    rolldownOptions: {
      output: {
        entryFileNames: 'main.js',
        chunkFileNames: 'parts/[name]-[hash].js',
        // Core costs little to read and nothing to begin; schemas take time to build, so they stay with the verbs that need them.
        codeSplitting: {
          groups: [
            {
              name: 'program',
              test: /src[\\/](shop[\\/]store|adapters[\\/]file[\\/]package-root|faces[\\/]cli[\\/](leave|terminal|about))\.ts$/,
              priority: 1,
            },
            { name: 'core', test: /src[\\/]core[\\/]/ },
            { name: 'zod', test: /node_modules[\\/]zod[\\/]/ },
            { name: 'store', test: /src[\\/]adapters[\\/](store|workshop)[\\/]/ },
          ],
        },
      },
    },
  },
});
