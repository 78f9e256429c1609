/**
 * Which workbook on the server a kept one is, as this browser remembers it: with the revision that it stands on, so that
 * work done without a connection is found again and sent.
 */
import { linkKey, type BrowserStore } from '$lib/browser/store';
import { VERSION, type Workbook } from '$lib/workbook/schema';
import type { Role } from '$lib/protocol/roles';
import type { Link } from './sync';

export interface StoredLink extends Link {
	/** When that revision was saved; milliseconds since 1970. */
	readonly at: number;
	/** What one may do there, as last heard; null where everybody may do everything. */
	readonly role: Role | null;
}

export async function readLink(store: BrowserStore, document: string): Promise<StoredLink | null> {
	const kept = (await store.setting(linkKey(document))) as StoredLink | undefined;
	if (!kept) return null;
	const base = await broughtUp(kept.base);
	if (!base) return null;
	const { sent: before, ...link } = kept;
	const sent = before && (await broughtUp(before));
	return { ...link, base, ...(sent && { sent }) };
}

/** Kept by an earlier version of the app, it is brought up as a file would be. */
async function broughtUp(workbook: Workbook): Promise<Workbook | null> {
	if (workbook.version === VERSION) return workbook;
	const { loadWorkbook } = await import('$lib/workbook/load');
	const loaded = loadWorkbook(JSON.stringify(workbook), workbook.title);
	return loaded.ok ? loaded.workbook : null;
}

/** Call after the workbook that belongs to it is kept. */
export const keepLink = (store: BrowserStore, document: string, link: StoredLink): Promise<void> =>
	store.keepSetting(linkKey(document), link);

export const dropLink = (store: BrowserStore, document: string): Promise<void> =>
	store.dropSetting(linkKey(document));

/** The kept workbook that is this one on the server; null where this browser has none. */
export async function findLinked(store: BrowserStore, id: string): Promise<string | null> {
	for (const { id: document } of await store.list()) {
		const kept = (await store.setting(linkKey(document))) as StoredLink | undefined;
		if (kept?.id === id) return document;
	}
	return null;
}
