import { sveltekit } from '@sveltejs/kit/vite';
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** The shapes, rules and edits of a workbook, and its units; not what compares, merges, loads or describes files. */
const HELD =
	/src\/lib\/(units\/(?!describe|reference)|workbook\/(commands|consistency)\b|workbook\/(axes|basic-schema|canonical|cells|dates|date-text|formula-names|front-schema|hash|lookup|patch|place|plans|picture-names|picture-parts|picture-schema|programme-schema|quote-schema|range|review-schema|scenario|schema|shape|shown|study-names|study-parts|study-schema|value-schema|values)\.ts)/;

export default defineConfig({
	plugins: [sveltekit()],
	worker: { format: 'es' },
	build: {
		rolldownOptions: {
			output: {
				// What every page needs to hold and edit a workbook is one file: cut finely, it would weigh more.
				codeSplitting: { groups: [{ name: 'workbook', test: HELD }] }
			}
		}
	},
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
