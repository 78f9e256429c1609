import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeptCommand, KeptDocument, Store } from '$lib/browser/store';
import type { Command } from '$lib/workbook/commands';
import { Keeper } from '$lib/ui/keeper';
import { shop } from './shop';

const command: Command = {
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: 'price', at: [], value: 1.9 }]
};

/** A store in memory that fails when told to. */
function memory() {
	const whole: KeptDocument[] = [];
	const commands: KeptCommand[] = [];
	const state = { failing: false };
	const store = {
		async keepWhole(document: KeptDocument) {
			if (state.failing) throw new Error('the disk is full');
			whole.push(document);
		},
		async keepCommands(some: readonly KeptCommand[]) {
			if (state.failing) throw new Error('the disk is full');
			commands.push(...some);
		}
	} as unknown as Store;
	return { store, whole, commands, state };
}

function keeping() {
	const kept = memory();
	const said: string[] = [];
	const keeper = new Keeper(
		kept.store,
		{ id: 'd', workbook: shop, from: 'test', upTo: 0, whole: 0 },
		{ onsaved: () => said.push('saved'), onfailed: (why) => said.push(why) }
	);
	return { ...kept, said, keeper };
}
const settle = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('work as it is kept', () => {
	it('writes each command down before it is called saved', async () => {
		const { keeper, commands, said } = keeping();
		keeper.keep([command], shop);
		expect(said).toEqual([]);
		await settle();
		expect(commands).toMatchObject([{ document: 'd', number: 1 }]);
		expect(said).toEqual(['saved']);
	});
	it('writes the whole workbook after a quiet moment, with the last command that it holds', async () => {
		const { keeper, whole } = keeping();
		keeper.keep([command], shop);
		keeper.keep([command], shop);
		await vi.advanceTimersByTimeAsync(3000);
		expect(whole).toMatchObject([{ id: 'd', upTo: 2 }]);
	});
	it('writes at once when the page goes away', async () => {
		const { keeper, whole } = keeping();
		keeper.keep([command], shop);
		await keeper.flush();
		expect(whole).toHaveLength(1);
		await keeper.flush();
		expect(whole).toHaveLength(1);
	});
	it('says why it cannot, and writes the whole once it can', async () => {
		const { keeper, whole, commands, said, state } = keeping();
		state.failing = true;
		keeper.keep([command], shop);
		await settle();
		expect(said).toEqual(['the disk is full']);
		state.failing = false;
		keeper.keep([command], shop);
		await settle();
		expect(whole).toMatchObject([{ upTo: 2 }]);
		expect(commands).toEqual([]);
		expect(said.at(-1)).toBe('saved');
	});
	it('writes what is left when another tab asks, and never again', async () => {
		const { keeper, whole, commands } = keeping();
		keeper.keep([command], shop);
		await keeper.stop(false);
		expect(whole).toHaveLength(1);
		keeper.keep([command], shop);
		await settle();
		expect(commands).toHaveLength(1);
	});
	it('writes nothing more when another tab has taken the workbook', async () => {
		const { keeper, whole } = keeping();
		keeper.keep([command], shop);
		await settle();
		await keeper.stop(true);
		await vi.advanceTimersByTimeAsync(5000);
		expect(whole).toEqual([]);
	});
});
