/** A paper is taken of figures that answer the last edit, never of those before it. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, expect, it, vi } from 'vitest';
import { setOpenDocument, setSession } from '$lib/ui/context';
import type { OpenDocument } from '$lib/ui/open-document.svelte';
import PapersPage from '$lib/ui/papers/PapersPage.svelte';
import { pdfTexts } from '$lib/ui/papers/pdf-texts';
import { texts } from '$lib/ui/papers/texts';
import { openShipped } from '../../reference/shipped';
import { toldSession } from '../still';

vi.mock('$app/state', () => ({ page: { url: new URL('http://shop.test/papers') } }));

let close = () => {};
afterEach(() => close());

function opened() {
	const model = openShipped('shop');
	const { session, engine } = toldSession(model.workbook);
	const settle = () => {
		for (const { id } of model.workbook.scenarios)
			engine.onresults(model.results(id), session.revision);
		engine.onsettled(session.revision);
		flushSync();
	};
	const page = ((anchor, props) => {
		setSession(session);
		setOpenDocument({ sharing: { link: null } } as unknown as OpenDocument);
		return PapersPage(anchor, props);
	}) as typeof PapersPage;
	settle();
	const own = mount(page, { target: document.body, context: new Map() });
	flushSync();
	close = () => void unmount(own);
	return { session, settle };
}

const buttons = () =>
	[...document.querySelectorAll<HTMLButtonElement>('.acts button')].map(
		({ textContent, disabled }) => [textContent, disabled]
	);
const said = () => document.querySelector('.acts [role=status]')?.textContent;

it('waits while an edit is computed', () => {
	const { session, settle } = opened();
	expect(buttons()).toEqual([
		[pdfTexts.take, false],
		[texts.print, false]
	]);
	session.apply({
		...{ kind: 'set_inputs', scenario: 'base' },
		entries: [{ quantity: 'resin_price', at: [], value: 2.5 }]
	});
	flushSync();
	expect(buttons().map(([, disabled]) => disabled)).toEqual([true, true]);
	expect(said()).toBe(texts.waits);
	settle();
	expect(buttons().map(([, disabled]) => disabled)).toEqual([false, false]);
	expect(said()).toBe('');
});
