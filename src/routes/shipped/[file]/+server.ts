/**
 * The workbooks that come with the app, as files of its own.
 */
import { error } from '@sveltejs/kit';
import type { EntryGenerator, RequestHandler } from './$types';

export const prerender = true;

const files = import.meta.glob<string>('/scenarios/*.json', {
	query: '?raw',
	import: 'default'
});
const nameOf = (path: string) => path.slice(path.lastIndexOf('/') + 1);

export const entries: EntryGenerator = () =>
	Object.keys(files).map((path) => ({ file: nameOf(path) }));

export const GET: RequestHandler = async ({ params }) => {
	const path = Object.keys(files).find((one) => nameOf(one) === params.file);
	const read = path === undefined ? undefined : files[path];
	if (!read) error(404, `No workbook named "${params.file}" comes with the app.`);
	return new Response(await read(), {
		headers: { 'content-type': 'application/json; charset=utf-8' }
	});
};
