import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/**
 * Tests that change what a process has one of - its environment, its clock, its signals, its fonts, the programs it has found -
 * or that look at what their process leaves behind.
 */
const apart = [
  'tests/commands/**/*.test.ts',
  'tests/setup/**/*.test.ts',
  'tests/recording/**/*.test.ts',
  'tests/output/**/{failures,interrupt,part-files,parts,runs-exact,segment-cache,slides-pptx}*.test.ts',
];

/** `npm test`; `npm run test:slow` (`--mode slow`) adds the files named `*.slow.test.ts`. */
export default defineConfig(({ mode }) => {
  const slow = mode === 'slow' || process.env.SLOW === '1';
  const exclude = ['**/node_modules/**', ...(slow ? [] : ['tests/**/*.slow.test.ts'])];
  return {
    test: {
      // canvas is a native addon: it works in a process of its own, not in a VM context.
      pool: 'forks',
      // As many as there are cores; vitest by itself leaves one idle, which of two is half.
      maxWorkers: availableParallelism(),
      testTimeout: slow ? 600_000 : 60_000,
      hookTimeout: 120_000,
      // No cache of renders: no test may find what another has left.
      env: { XDG_CACHE_HOME: '/dev/null', ...(slow ? { SLOW: '1' } : {}) },
      coverage: { provider: 'v8', include: ['src/**'], reportsDirectory: 'coverage' },
      projects: [
        // All others share a process: a third less work, since each module is loaded once a process instead of once a
        // file.
        {
          extends: true,
          test: { name: 'together', include: ['tests/**/*.test.ts'], exclude: [...exclude, ...apart], isolate: false },
        },
        {
          extends: true,
          test: { name: 'apart', include: apart, exclude },
        },
      ],
    },
  };
});
