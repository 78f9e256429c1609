import { describe, expect, it } from 'vitest';
import { applyCommand, type Command } from '$lib/workbook/commands';
import {
	doCommand,
	historyOf,
	MOST_STEPS,
	redo,
	redoLabel,
	undo,
	undoLabel,
	withOthers,
	type History
} from '$lib/workbook/history';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { plant, quantityOf } from './plant';

const price = (value: number): Command => ({
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: 'resin_price', at: [], value }]
});

function done(history: History, command: Command): History {
	const step = doCommand(history, command);
	if (!step.ok) throw new Error(step.problem.message);
	return step.history;
}

describe('the history of a workbook', () => {
	it('says in words what would be taken back, and what done again', () => {
		const history = done(historyOf(plant), price(2.1));
		expect(undoLabel(history)).toBe('Resin price: 1.95 to 2.1 EUR/kg');
		expect(redoLabel(history)).toBeNull();
		const back = undo(history)!.history;
		expect(undoLabel(back)).toBeNull();
		expect(redoLabel(back)).toBe('Resin price: 1.95 to 2.1 EUR/kg');
	});

	it('forgets what was undone once something else is done', () => {
		const back = undo(done(historyOf(plant), price(2.1)))!.history;
		const other = done(back, price(3));
		expect(redo(other)).toBeNull();
		expect(quantityOf(other.workbook, 'resin_price').value).toBe(3);
	});

	it('tells those who follow along which command was applied', () => {
		const taken = undo(done(historyOf(plant), price(2.1)))!;
		expect(taken).toMatchObject({ command: price(1.95) });
	});

	it('is not lengthened by a command that changes nothing or is refused', () => {
		const same: Command = {
			kind: 'set_relation_pair',
			relation: 'runs',
			pair: ['PX15B', 'L1'],
			exists: true
		};
		expect(done(historyOf(plant), same).past).toEqual([]);
		expect(doCommand(historyOf(plant), { kind: 'remove_scenario', id: 'base' }).ok).toBe(false);
	});

	it('keeps the latest thousand steps', () => {
		let history = historyOf(plant);
		for (let i = 0; i < MOST_STEPS + 5; i++) history = done(history, price(i));
		expect(history.past).toHaveLength(MOST_STEPS);
	});
});

describe('what others did', () => {
	const others = (workbook: Workbook, value: number) => {
		const result = applyCommand(workbook, lot(value));
		if (!result.ok) throw new Error(result.problem.message);
		return result.workbook;
	};
	const lot = (value: number): Command => ({
		kind: 'set_inputs',
		scenario: 'base',
		entries: [{ quantity: 'setup_time', at: ['PX15B', 'PX20'], value }]
	});

	it('stays when own steps are taken back', () => {
		const mine = done(done(historyOf(plant), price(2.1)), price(2.2));
		const both = withOthers(mine, others(mine.workbook, 777));
		const back = undo(undo(both)!.history)!.history;
		expect(quantityOf(back.workbook, 'resin_price').value).toBe(1.95);
		expect(inputAt(back.workbook, 'base', 'setup_time', ['PX15B', 'PX20']).value).toBe(777);
		expect(undo(back)).toBeNull();
	});

	it('stays when a quantity is put back that was removed before', () => {
		const mine = done(historyOf(plant), { kind: 'remove_quantity', name: 'lot_size', also: true });
		const back = undo(withOthers(mine, others(mine.workbook, 777)))!;
		expect(back.ok && quantityOf(back.history.workbook, 'lot_size')).toEqual(
			quantityOf(plant, 'lot_size')
		);
		expect(inputAt(back.history.workbook, 'base', 'setup_time', ['PX15B', 'PX20']).value).toBe(777);
	});

	it('is not overwritten by taking back a step on the same value: that step is left out, and says why', () => {
		const mine = done(done(historyOf(plant), { kind: 'set_title', title: 'Mine' }), lot(500));
		const refused = undo(withOthers(mine, others(mine.workbook, 777)))!;
		expect(refused.ok === false && refused.problem.message).toMatch(
			/cannot be undone: somebody has changed the same since/
		);
		const before = undo(refused.history)!;
		expect(before.ok && before.history.workbook.title).toBe(plant.title);
		expect(inputAt(before.history.workbook, 'base', 'setup_time', ['PX15B', 'PX20']).value).toBe(
			777
		);
	});

	it('names what was removed meanwhile and can therefore not be put back as it was', () => {
		const renamed = { ...quantityOf(plant, 'lot_size'), label: 'Size of a lot' };
		const mine = done(historyOf(plant), {
			kind: 'replace_quantity',
			name: 'lot_size',
			quantity: renamed
		});
		const theirs = applyCommand(mine.workbook, {
			kind: 'remove_quantity',
			name: 'lot_size',
			also: true
		});
		const refused = undo(withOthers(mine, theirs.ok ? theirs.workbook : plant))!;
		expect(refused.ok === false && refused.problem.message).toMatch(
			/lot_size has been changed or removed since/
		);
	});
});
