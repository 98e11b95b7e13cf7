import { defineConfig } from 'vitest/config';

const resultFile = process.env['RAMPBOOK_TEST_RESULT'];

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 240_000,
    reporters: resultFile === undefined ? ['default'] : ['default', ['json', { outputFile: resultFile }]],
  },
});
