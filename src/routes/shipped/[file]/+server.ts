/**
 * The workbooks that come with the app, as files of its own.
 */
import { asLoaded, shippedFiles } from '../as-loaded';
import type { EntryGenerator, RequestHandler } from './$types';

export const prerender = true;

export const entries: EntryGenerator = shippedFiles;

export const GET: RequestHandler = async ({ params }) => {
	const { text } = await asLoaded(params.file);
	return new Response(text, {
		headers: { 'content-type': 'application/json; charset=utf-8' }
	});
};
