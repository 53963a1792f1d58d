import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    maxWorkers: '100%',
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
