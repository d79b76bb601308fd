import { defineConfig } from 'vitest/config';

/** `npm test`; `npm run test:slow` (`--mode slow`) adds the files named `*.slow.test.ts`. */
export default defineConfig(({ mode }) => {
  const slow = mode === 'slow' || process.env.SLOW === '1';
  return {
    test: {
      include: ['tests/**/*.test.ts'],
      exclude: ['**/node_modules/**', ...(slow ? [] : ['tests/**/*.slow.test.ts'])],
      // canvas is a native addon: it works in a process of its own, not in a VM context.
      pool: 'forks',
      testTimeout: slow ? 600_000 : 60_000,
      hookTimeout: 120_000,
      // No cache of renders: no test may find what another has left.
      env: { XDG_CACHE_HOME: '/dev/null', ...(slow ? { SLOW: '1' } : {}) },
      coverage: { provider: 'v8', include: ['src/**'], reportsDirectory: 'coverage' },
    },
  };
});
