/**
 * Joins the server to the framework: what begins with /api/ is the interface's, all else are pages, which hold no
 * data of anyone. The process that serves finds here what it must end when it stops.
 */
import { building } from '$app/environment';
import type { Handle, ServerInit } from '@sveltejs/kit';
import { settingsFrom, start, type Running } from '$lib/server/start';

let running: Running | undefined;

export const init: ServerInit = async () => {
	if (building) return;
	running = await start(settingsFrom(process.env));
	(globalThis as { [key: symbol]: unknown })[Symbol.for('metrewright.server')] = running;
};

export const handle: Handle = async ({ event, resolve }) => {
	if (!running || !/^\/api(\/|$)/.test(event.url.pathname)) return resolve(event);
	const { proxies } = running.services.settings;
	return running.app.handle(event.request, addressOf(event, proxies));
};

/** The caller's address: that of the connection, or the one that the outermost trusted proxy saw. */
function addressOf(event: Parameters<Handle>[0]['event'], proxies: number): string {
	const stated = event.request.headers.get('x-forwarded-for')?.split(',') ?? [];
	const seen = proxies > 0 ? stated.at(-proxies)?.trim() : undefined;
	return seen || event.getClientAddress();
}
