/**
 * The text in which a shipped workbook is served: as it was loaded, dates as numbers, so that the page reads it without
 * the loader.
 */
import { error } from '@sveltejs/kit';
import { loadWorkbook } from '$lib/workbook/load';
import type { Workbook } from '$lib/workbook/schema';

const files = import.meta.glob<string>('/scenarios/*.json', { query: '?raw', import: 'default' });
const nameOf = (path: string) => path.slice(path.lastIndexOf('/') + 1);

export const shippedFiles = () => Object.keys(files).map((path) => ({ file: nameOf(path) }));

export async function asLoaded(file: string): Promise<{ workbook: Workbook; text: string }> {
	const path = Object.keys(files).find((known) => nameOf(known) === file);
	const text = path === undefined ? undefined : await files[path]?.();
	if (text === undefined) error(404, `No workbook named "${file}" comes with the app.`);
	const loaded = loadWorkbook(text, file);
	if (!loaded.ok) error(500, loaded.problem.line);
	if (loaded.notices.length > 0)
		error(500, `${file} is not as the program saves it: open it and save it over itself.`);
	return { workbook: loaded.workbook, text: JSON.stringify(loaded.workbook) };
}
