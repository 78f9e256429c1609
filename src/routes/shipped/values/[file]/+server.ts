/**
 * The values of the workbooks that come with the app, computed by the build with the same engine, for the first
 * moments of a fresh page: see `engine/shipped-values.ts`.
 */
import { error } from '@sveltejs/kit';
import { version } from '$app/environment';
import { Model } from '$lib/engine/model';
import { packValues } from '$lib/engine/shipped-values';
import { loadWorkbook } from '$lib/workbook/load';
import type { EntryGenerator, RequestHandler } from './$types';

export const prerender = true;

const files = import.meta.glob<string>('/scenarios/*.json', { query: '?raw', import: 'default' });
const nameOf = (path: string) => path.slice(path.lastIndexOf('/') + 1);

export const entries: EntryGenerator = () =>
	Object.keys(files).map((path) => ({ file: nameOf(path) }));

export const GET: RequestHandler = async ({ params }) => {
	const path = Object.keys(files).find((known) => nameOf(known) === params.file);
	const text = path === undefined ? undefined : await files[path]?.();
	if (text === undefined) error(404, `No workbook named "${params.file}" comes with the app.`);
	const loaded = loadWorkbook(text, params.file);
	if (!loaded.ok) error(500, loaded.problem.line);
	// The page reads the text as it stands, without the loader.
	if (JSON.stringify(loaded.workbook) !== JSON.stringify(JSON.parse(text)))
		error(500, `${params.file} is not as the program saves it: open it and save it over itself.`);
	const model = Model.open(loaded.workbook);
	const ids = loaded.workbook.scenarios.map(({ id }) => id);
	const values = packValues(text, version, {
		problems: model.problems,
		results: ids.map((id) => model.results(id)),
		faults: ids.map((id) => model.faults(id))
	});
	return new Response(JSON.stringify(values), {
		headers: { 'content-type': 'application/json; charset=utf-8' }
	});
};
