/**
 * Studies: columns of the shipped plant beside the second engine and beside a hand-written chain, memory, growth, and
 * a study in the page. Measured as it is shipped, bundled: run as it stands, every import would cost a call.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-bench-'));
try {
	await build({
		configFile: false,
		logLevel: 'error',
		resolve: { alias: { $lib: join(process.cwd(), 'src/lib') } },
		build: {
			ssr: 'tests/bench/study-columns.ts',
			outDir: folder,
			minify: false,
			rollupOptions: { output: { entryFileNames: 'bench.mjs' } }
		},
		ssr: { noExternal: true }
	});
	await import(pathToFileURL(join(folder, 'bench.mjs')).href);
} finally {
	rmSync(folder, { recursive: true });
}
await import('./study-page');
