import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeptCommand, StoredDocument, BrowserStore } from '$lib/browser/store';
import type { Command } from '$lib/workbook/commands';
import { Autosave } from '$lib/ui/autosave';
import { shop } from './shop';

const command: Command = {
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: 'price', at: [], value: 1.9 }]
};

/** A store in memory that fails when told to. */
function memory() {
	const whole: StoredDocument[] = [];
	const commands: KeptCommand[] = [];
	const state = { failing: false };
	const store = {
		async keepWhole(document: StoredDocument) {
			if (state.failing) throw new Error('the disk is full');
			whole.push(document);
		},
		async keepCommands(some: readonly KeptCommand[]) {
			if (state.failing) throw new Error('the disk is full');
			commands.push(...some);
		}
	} as unknown as BrowserStore;
	return { store, whole, commands, state };
}

function keeping() {
	const kept = memory();
	const said: string[] = [];
	const autosave = new Autosave(
		kept.store,
		{ id: 'd', workbook: shop, from: 'test', upTo: 0, whole: 0 },
		{ onsaved: () => said.push('saved'), onfailed: (why) => said.push(why) }
	);
	return { ...kept, said, autosave };
}
const settle = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('work as it is kept', () => {
	it('writes each command down before it is called saved', async () => {
		const { autosave, commands, said } = keeping();
		autosave.keep([command], shop);
		expect(said).toEqual([]);
		await settle();
		expect(commands).toMatchObject([{ document: 'd', number: 1 }]);
		expect(said).toEqual(['saved']);
	});
	it('writes the whole workbook after a quiet moment, with the last command that it holds', async () => {
		const { autosave, whole } = keeping();
		autosave.keep([command], shop);
		autosave.keep([command], shop);
		await vi.advanceTimersByTimeAsync(3000);
		expect(whole).toMatchObject([{ id: 'd', upTo: 2 }]);
	});
	it('writes at once when the page goes away', async () => {
		const { autosave, whole } = keeping();
		autosave.keep([command], shop);
		await autosave.flush();
		expect(whole).toHaveLength(1);
		await autosave.flush();
		expect(whole).toHaveLength(1);
	});
	it('says why it cannot, and writes the whole once it can', async () => {
		const { autosave, whole, commands, said, state } = keeping();
		state.failing = true;
		autosave.keep([command], shop);
		await settle();
		expect(said).toEqual(['the disk is full']);
		state.failing = false;
		autosave.keep([command], shop);
		await settle();
		expect(whole).toMatchObject([{ upTo: 2 }]);
		expect(commands).toEqual([]);
		expect(said.at(-1)).toBe('saved');
	});
	it('writes what is left when another tab asks, and never again', async () => {
		const { autosave, whole, commands } = keeping();
		autosave.keep([command], shop);
		await autosave.stop(false);
		expect(whole).toHaveLength(1);
		autosave.keep([command], shop);
		await settle();
		expect(commands).toHaveLength(1);
	});
	it('writes nothing more when another tab has taken the workbook', async () => {
		const { autosave, whole } = keeping();
		autosave.keep([command], shop);
		await settle();
		await autosave.stop(true);
		await vi.advanceTimersByTimeAsync(5000);
		expect(whole).toEqual([]);
	});
});
