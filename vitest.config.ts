import { defineConfig } from 'vitest/config';

/** Unit, property and check tests run together; browser and server-process tests are their own project (slower, one at a time). */
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
        },
      },
      {
        test: {
          name: 'loop',
          include: ['tests/loop/**/*.test.ts'],
          environment: 'node',
          testTimeout: 600_000,
        },
      },
      {
        test: {
          name: 'face',
          // A page on a busy machine may take its time; what is polled for is never an absence that lasts.
          expect: { poll: { timeout: 10_000 } },
          include: ['tests/face/**/*.test.ts'],
          environment: 'node',
          testTimeout: 180_000,
          hookTimeout: 180_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
