/** A quantity while it is written: what the engine says of it, and what is kept. */
import { flushSync } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Engine } from '$lib/browser/engine-client';
import { Model } from '$lib/engine/model';
import { Editing } from '$lib/ui/editor/editing.svelte';
import { Session } from '$lib/ui/session.svelte';
import { shop } from '../shop';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function editing(name: string | null) {
	const model = Model.open(shop);
	const engine: Engine = {
		open: () => {},
		apply: () => {},
		why: () => Promise.resolve(null),
		tryQuantity: (quantity, replaces) =>
			Promise.resolve(model.tryQuantity(quantity, replaces ?? undefined)),
		lend: () => {},
		close: () => {}
	};
	const session = new Session(() => engine, 'en');
	session.open(shop);
	return { session, editing: new Editing(session, name, 0) };
}

/** Until the engine has been asked and has answered. */
async function typed(one: Editing, draft: Partial<Editing['draft']>) {
	Object.assign(one.draft, draft);
	flushSync();
	one.ask();
	await vi.advanceTimersByTimeAsync(1000);
}

describe('a new quantity', () => {
	it('has the messages of its formula before it has a label', async () => {
		const { editing: one } = editing(null);
		await typed(one, { follows: 'formula', formula: 'price * mas' });
		expect(one.problemOf(null)).toMatchObject({ suggestion: 'mass' });
		await typed(one, { formula: 'price * 2', unit: 'EUR/kg' });
		expect(one.problemOf(null)).toBeNull();
		expect(one.outcome).toMatch(/^gives EUR\/kg: 4\.040 EUR\/kg/);
		await typed(one, { formula: 'mass * 2', unit: 'kg/m' });
		expect(one.problemOf(null)?.message).toMatch(/^mass is per product, but this_quantity is/);
		// It is not kept under the name that stands in.
		expect(await one.keep()).toBe(false);
		expect(one.problem?.message).toContain('no label');
	});

	it('whose formula has a fault that was not told yet tells it before it is kept', async () => {
		const { session, editing: one } = editing(null);
		Object.assign(one.draft, { label: 'Twice', follows: 'formula', formula: 'price *' });
		expect(await one.keep()).toBe(false);
		expect(one.problem?.code).toBe('faulty');
		expect(one.problemOf(null)).not.toBeNull();
		expect(session.layout?.byName.has('twice')).toBe(false);
		expect(one.canGoAhead).toBe(true);
		expect(await one.goAhead()).toBe(true);
		expect(session.layout?.byName.has('twice')).toBe(true);
	});
});

describe('a quantity that stands', () => {
	it('is kept with a fault by somebody who has read it', async () => {
		const { session, editing: one } = editing('cost');
		await typed(one, { formula: 'price * mas' });
		expect(one.problemOf(null)).not.toBeNull();
		expect(await one.keep()).toBe(true);
		expect(session.layout?.byName.get('cost')?.quantity.formula).toBe('price * mas');
	});
});
