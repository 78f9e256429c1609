import { flushSync, mount, tick, unmount, type Component } from 'svelte';
import { afterEach, expect, it } from 'vitest';
import { setSession } from '$lib/ui/context';
import { Session } from '$lib/ui/session.svelte';
import Later from '$lib/ui/shell/Later.svelte';
import Loading from '$lib/ui/shell/Loading.svelte';

type Part = Component<{ text: string }>;
let close = () => {};
afterEach(() => close());

function shown(load: () => Promise<{ readonly default: Part }>, when: boolean) {
	const session = new Session(() => {
		throw new Error('not asked here');
	}, 'en');
	const page = ((anchor, given) => {
		setSession(session);
		return (Later as unknown as Part)(anchor, given as never);
	}) as Part;
	const own = mount(page, { target: document.body, props: propsOf(when, load) as never });
	flushSync();
	close = () => void unmount(own);
	return session;
}
const propsOf = (when: boolean, load: unknown) => ({ when, load, props: { text: 'A part' } });
const fetched = async () => {
	for (let i = 0; i < 5; i++) await tick();
};

it('fetches a part only once it is called for, and shows it with what it is given', async () => {
	let asked = 0;
	const load = () => {
		asked++;
		return Promise.resolve({ default: Loading as Part });
	};
	shown(load, false);
	await fetched();
	expect(asked).toBe(0);
	close();
	shown(load, true);
	await fetched();
	expect([asked, document.body.textContent]).toEqual([1, expect.stringContaining('A part')]);
});

it('says so where the part cannot be fetched', async () => {
	const session = shown(() => Promise.reject(new Error('offline')), true);
	await fetched();
	expect(session.notice?.text).toMatch(/was not fetched. Check the connection/);
});
