/**
 * What the first screen weighs: the JavaScript that the served page names, in its text and in its preload
 * header, with all that those files import; then the workers. Compressed as a server would.
 */
import { readdirSync } from 'node:fs';
import { CLIENT, firstScreenScripts, readScript as read, weightOf } from './first-screen';
import { heading, line } from './print';
import { serveApp } from './serve-app';
import { loadedWith } from './static-imports';

const WORKERS = '/_app/immutable/workers/';
/** Stands in the second engine's code, however it is packed. */
const TELLTALE = 'buildFromSheets';
/** In kB, of the first screen. */
const GOAL = 150;

const app = await serveApp();
const first = await firstScreenScripts(app.address);
app.stop();

const workers = readdirSync(CLIENT + WORKERS)
	.filter((file) => file.endsWith('.js'))
	.map((file) => WORKERS + file);
const workerOf = (name: string) =>
	loadedWith(
		workers.filter((path) => path.startsWith(WORKERS + name)),
		read
	);

heading('Page weight: JavaScript, gzip');
const [page1, engine, verifier] = [first, workerOf('engine.'), workerOf('verifier.')];
line('first screen', `${kilobytes(page1)} in ${page1.length} files (goal: ${GOAL} kB or less)`);
line('with the engine worker', kilobytes([...new Set([...page1, ...engine])]));
line('the engine worker alone', kilobytes(engine));
line('the second engine', `${kilobytes(verifier)}, fetched after the first numbers are there`);
for (const path of [...page1].sort((a, b) => weightOf([b]) - weightOf([a])).slice(0, 4))
	line('heaviest of the first', `${kilobytes([path])} ${path.replace('/_app/immutable/', '')}`);
const holds = (paths: readonly string[]) => paths.some((path) => read(path).includes(TELLTALE));
line(
	'HyperFormula',
	`${holds(page1) ? 'IS' : 'is not'} in the first screen, ${holds(engine) ? 'IS' : 'is not'} in the engine worker, ${holds(verifier) ? 'is' : 'IS NOT'} in the second engine's`
);

function kilobytes(paths: readonly string[]): string {
	return `${(weightOf(paths) / 1000).toFixed(1)} kB`;
}
