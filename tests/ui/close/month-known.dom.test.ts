/** Which month is closed next is known once the base is computed: before that no file is taken for one. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, expect, it, vi } from 'vitest';
import CloseMonth from '$lib/ui/close/CloseMonth.svelte';
import { texts } from '$lib/ui/close/texts';
import { setSession } from '$lib/ui/context';
import { openOf, type Open } from '$lib/ui/figure/open';
import { pictureOf } from '$lib/workbook/lookup';
import { openShipped } from '../../reference/shipped';
import { StillObserver, toldSession } from '../still';

vi.mock('$lib/browser/table-room', () => ({
	TableRoom: class {
		open() {}
		leave() {}
	}
}));

let close = () => {};
afterEach(() => {
	close();
	vi.unstubAllGlobals();
});

it('waits for the base, and then begins with the first open month', () => {
	vi.stubGlobal('ResizeObserver', StillObserver);
	const model = openShipped('marram');
	const { session, engine } = toldSession(model.workbook);
	const results = model.results('base');
	const picture = pictureOf(model.workbook, 'waterfall')!;
	const part = ((anchor, props) => {
		setSession(session);
		return CloseMonth(anchor, props);
	}) as typeof CloseMonth;
	const look = () => {
		close();
		const props = { picture, open: openOf(session)! as Open };
		const own = mount(part, { target: document.body, context: new Map(), props });
		close = () => void unmount(own);
		flushSync();
	};
	look();
	expect(document.body.textContent).toContain(texts.computing);
	expect(document.querySelector('input[type=file]')).toBeNull();

	engine.onresults(results, session.revision);
	look();
	const select = document.querySelector('select')!;
	expect(select.selectedOptions[0]!.textContent).toBe('May 2027');
	expect(document.querySelector('input[type=file]')).not.toBeNull();
});
