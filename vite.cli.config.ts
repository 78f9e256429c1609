/** The command line as one program for Node, beside the built app: at run time it needs the packages of "dependencies" alone. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

export default defineConfig({
	publicDir: false,
	resolve: { alias: { $lib: fileURLToPath(new URL('src/lib', import.meta.url)) } },
	build: {
		ssr: 'src/cli/main.ts',
		outDir: 'build/cli',
		emptyOutDir: true,
		target: 'node20',
		copyPublicDir: false
	}
});
