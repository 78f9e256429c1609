import { sveltekit } from '@sveltejs/kit/vite';
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	plugins: [sveltekit()],
	worker: { format: 'es' },
	test: {
		// Guards against a test that hangs, on the slowest machine; how fast things are is for the benchmarks.
		testTimeout: 300_000,
		hookTimeout: 300_000,
		// Both of two processors, and the modules of a process read once for all of its files: no test leaves anything behind.
		maxWorkers: Math.max(1, availableParallelism()),
		isolate: false,
		projects: [
			{
				extends: true,
				test: {
					name: 'pure',
					environment: 'node',
					include: ['tests/**/*.test.ts'],
					exclude: ['tests/ui/**', 'tests/browser/**']
				}
			},
			{
				extends: true,
				// Without the browser condition Svelte's server build is taken and nothing mounts.
				resolve: { conditions: ['browser'] },
				test: { name: 'ui', environment: 'jsdom', include: ['tests/ui/**/*.test.ts'] }
			}
		]
	}
});
