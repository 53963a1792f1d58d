import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    maxWorkers: '100%',
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
