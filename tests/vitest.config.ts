import { defineConfig } from 'vitest/config';

const resultFile = process.env['RAMPBOOK_TEST_RESULT'];

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    // Many tests wait for processes and browsers of their own: no processor is kept free for the runner.
    maxWorkers: '100%',
    testTimeout: 180_000,
    hookTimeout: 240_000,
    reporters: resultFile === undefined ? ['default'] : ['default', ['json', { outputFile: resultFile }]],
  },
});
