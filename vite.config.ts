import { sveltekit } from '@sveltejs/kit/vite';
import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import type { Rolldown } from 'vite';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/longest-first.ts';

type Modules = { getModuleInfo(id: string): Pick<Rolldown.ModuleInfo, 'importedIds'> | null };

/** What every reader waits for: the layout and the first page, with all that they load along. */
const FIRST = ['src/routes/+layout.svelte', 'src/routes/+page.svelte'].map((path) => resolve(path));

/** Names the file of what the first screen loads: one file, as it would weigh more when cut finely. */
function firstScreen() {
	const found = new Set<string>();
	const follow = (id: string, modules: Modules) => {
		if (found.has(id)) return;
		found.add(id);
		for (const next of modules.getModuleInfo(id)?.importedIds ?? []) follow(next, modules);
	};
	return (id: string, modules: Modules) => {
		if (found.size === 0) for (const root of FIRST) follow(root, modules);
		return found.has(id) ? 'first' : null;
	};
}

export default defineConfig({
	plugins: [sveltekit()],
	worker: { format: 'es' },
	build: {
		rolldownOptions: {
			output: {
				codeSplitting: { groups: [{ name: firstScreen(), debugName: 'first' }] }
			}
		}
	},
	test: {
		// Guards against a test that hangs, on the slowest machine; how fast things are is for the benchmarks.
		testTimeout: 900_000,
		hookTimeout: 900_000,
		expect: { poll: { timeout: 600_000 } },
		// Both of two processors, and the modules of a process read once for all of its files: no test leaves anything behind.
		maxWorkers: Math.max(1, availableParallelism()),
		isolate: false,
		// On a page it is fetched; a test has all edits from the start.
		setupFiles: ['tests/all-edits.ts'],
		sequence: { sequencer: LongestFirst },
		projects: [
			{
				extends: true,
				test: {
					name: 'pure',
					environment: 'node',
					include: ['tests/**/*.test.ts'],
					exclude: ['tests/**/*.dom.test.ts', 'tests/browser/**']
				}
			},
			{
				extends: true,
				// What needs a page, which is made for each file. Without the browser condition Svelte's server build is taken and nothing mounts.
				resolve: { conditions: ['browser'] },
				test: { name: 'ui', environment: 'jsdom', include: ['tests/**/*.dom.test.ts'] }
			}
		]
	}
});
