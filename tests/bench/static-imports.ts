/** Which files a built script loads along with itself: its static imports, not those it may ask for later. */
import { posix } from 'node:path';

const IMPORT = /(?:^|[;}\n])(?:import|export)\b[^;"'()]*["']([^"']+)["']/g;

/** The paths that a script at `path` imports, as paths of the same root. */
export function staticImports(path: string, text: string): string[] {
	return [...text.matchAll(IMPORT)]
		.map((match) => match[1] ?? '')
		.filter((name) => name.startsWith('.'))
		.map((name) => posix.join(posix.dirname(path), name));
}

/** These files and all that they load along, each once. */
export function loadedWith(paths: readonly string[], read: (path: string) => string): string[] {
	const all = new Set(paths);
	for (const path of all) for (const other of staticImports(path, read(path))) all.add(other);
	return [...all];
}
