/**
 * The values of the workbooks that come with the app, computed by the build with the same engine, for the first
 * moments of a fresh page: see `engine/shipped-values.ts`.
 */
import { version } from '$app/environment';
import { Model } from '$lib/engine/model';
import { packValues } from '$lib/engine/shipped-values';
import { asLoaded, shippedFiles } from '../../as-loaded';
import type { EntryGenerator, RequestHandler } from './$types';

export const prerender = true;

export const entries: EntryGenerator = shippedFiles;

export const GET: RequestHandler = async ({ params }) => {
	const { workbook, text } = await asLoaded(params.file);
	const model = Model.open(workbook);
	const ids = workbook.scenarios.map(({ id }) => id);
	const values = packValues(text, version, {
		problems: model.problems,
		results: ids.map((id) => model.results(id)),
		faults: ids.map((id) => model.faults(id))
	});
	return new Response(JSON.stringify(values), {
		headers: { 'content-type': 'application/json; charset=utf-8' }
	});
};
