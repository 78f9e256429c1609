/** The JavaScript that the served first page names, in its text and in its preload header, with all that it loads along. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { loadedWith } from './static-imports';

/** What a server hands to browsers, from the folder of the project. */
export const CLIENT = 'build/client';

export const readScript = (path: string) => readFileSync(CLIENT + path, 'utf8');

export async function firstScreenScripts(address: string): Promise<string[]> {
	const answer = await fetch(address);
	const page = `${answer.headers.get('link') ?? ''}\n${await answer.text()}`;
	const named = [...page.matchAll(/_app\/immutable\/[\w./-]+\.js/g)].map(([path]) => `/${path}`);
	return loadedWith([...new Set(named)], readScript);
}

/** Bytes, compressed as a server would. */
export const weightOf = (paths: readonly string[]): number =>
	paths.reduce((sum, path) => sum + gzipSync(readScript(path)).length, 0);
