import { defineConfig } from 'vitest/config';

/** Both cores of a small machine; left alone, the runner keeps one for itself. */
const both = 2;

/** Unit, property and check tests run together; server processes are tried one at a time, pages of the browser two at a time. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: [
            'src/**/*.test.ts',
            'checks/**/*.check.ts',
            'tests/structure/**/*.test.ts',
            'tests/printed/**/*.test.ts',
          ],
          environment: 'node',
          testTimeout: 60_000,
          maxWorkers: both,
        },
      },
      {
        test: {
          name: 'loop',
          include: ['tests/loop/**/*.test.ts'],
          environment: 'node',
          testTimeout: 600_000,
          maxWorkers: both,
        },
      },
      {
        test: {
          name: 'server',
          // What is polled for on a busy machine may take its time; it is never an absence that lasts.
          expect: { poll: { timeout: 30_000 } },
          include: ['tests/server/**/*.test.ts'],
          environment: 'node',
          testTimeout: 300_000,
          hookTimeout: 300_000,
          fileParallelism: false,
        },
      },
      {
        test: {
          name: 'face',
          expect: { poll: { timeout: 30_000 } },
          include: ['tests/face/**/*.test.ts'],
          environment: 'node',
          testTimeout: 300_000,
          hookTimeout: 300_000,
          // Each file has a workshop and a browser of its own; more than two at once only wait for one another.
          maxWorkers: both,
        },
      },
    ],
  },
});
