import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { doCommand, historyOf, redo, undo } from '$lib/workbook/history';
import { loadWorkbook } from '$lib/workbook/load';
import { quantityPlaces } from '$lib/workbook/lookup';
import { saveWorkbook } from '$lib/workbook/save';
import { inputAt } from '$lib/workbook/scenario';
import { dice, KINDS, MAKERS, placesOf, randomWorkbook } from './arbitrary';

/** Says the problem, should there be one, instead of a bare mismatch. */
function reopened(text: string) {
	const loaded = loadWorkbook(text, 'random.json');
	return loaded.ok ? loaded.workbook : loaded.problem.line;
}

/** Down to absent against undefined and 0 against -0; a member called "constructor" confuses toStrictEqual. */
function expectSame(actual: unknown, expected: unknown) {
	if (!isDeepStrictEqual(actual, expected)) expect(actual).toEqual(expected);
	expect(isDeepStrictEqual(actual, expected)).toBe(true);
}

describe('random workbooks', () => {
	it('are sound, so that the laws below speak of real ones', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				expect(findProblems(randomWorkbook(dice))).toEqual([]);
			})
		);
	});

	it('come back from their file as they were saved', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				const workbook = randomWorkbook(dice);
				expectSame(reopened(saveWorkbook(workbook)), workbook);
			})
		);
	});

	it('are saved in the same text after they were opened', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				const text = saveWorkbook(randomWorkbook(dice));
				const again = reopened(text);
				expect(typeof again === 'string' ? again : saveWorkbook(again)).toBe(text);
			})
		);
	});

	it('have the same inputs in a scenario without changes as in its parent', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				const random = randomWorkbook(dice);
				const parent = dice.pick(random.scenarios).id;
				const plain = { id: 'plain', title: 'Plain', parent, changes: [] };
				const workbook = { ...random, scenarios: [...random.scenarios, plain] };
				for (const { quantity } of quantityPlaces(workbook).values())
					for (const at of placesOf(workbook, quantity))
						expect(inputAt(workbook, 'plain', quantity.name, at)).toEqual(
							inputAt(workbook, parent, quantity.name, at)
						);
			})
		);
	});
});

describe.each(KINDS)('the command %s', (kind) => {
	it('is taken back exactly by its inverse, and done again exactly by the inverse of that', () => {
		let applied = 0;
		fc.assert(
			fc.property(dice, (dice) => {
				const workbook = randomWorkbook(dice);
				const command = MAKERS[kind](workbook, dice);
				const result = command && applyCommand(workbook, command);
				if (!result?.ok) return;
				applied++;
				const back = applyCommand(result.workbook, result.inverse);
				expectSame(back.ok && back.workbook, workbook);
				const again = back.ok && applyCommand(back.workbook, back.inverse);
				expectSame(again && again.ok && again.workbook, result.workbook);
			}),
			{ numRuns: 200 }
		);
		expect(applied).toBeGreaterThan(20);
	});

	it('leaves the workbook it was given untouched', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				const workbook = randomWorkbook(dice);
				const before = JSON.stringify(workbook);
				const command = MAKERS[kind](workbook, dice);
				if (command) applyCommand(workbook, command);
				expect(JSON.stringify(workbook)).toBe(before);
			})
		);
	});

	it('never leaves a workbook that could not be saved and opened again', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				const workbook = randomWorkbook(dice);
				const command = MAKERS[kind](workbook, dice);
				const result = command && applyCommand(workbook, command);
				if (!result?.ok) return;
				expectSame(reopened(saveWorkbook(result.workbook)), result.workbook);
			})
		);
	});
});

describe('undo and redo', () => {
	it('lead back through every state, and forward again', () => {
		fc.assert(
			fc.property(dice, fc.array(fc.constantFrom(...KINDS), { maxLength: 12 }), (dice, kinds) => {
				let history = historyOf(randomWorkbook(dice));
				const states = [history.workbook];
				for (const kind of kinds) {
					const command = MAKERS[kind](history.workbook, dice);
					const step = command && doCommand(history, command);
					if (!step?.ok) continue;
					if (step.history.past.length > history.past.length) states.push(step.history.workbook);
					history = step.history;
				}
				const last = states.length - 1;
				for (let i = last - 1; i >= 0; i--) {
					history = undo(history)?.history ?? history;
					expectSame(history.workbook, states[i]);
				}
				expect(undo(history)).toBeNull();
				for (let i = 1; i <= last; i++) {
					history = redo(history)?.history ?? history;
					expectSame(history.workbook, states[i]);
				}
				expect(redo(history)).toBeNull();
			})
		);
	});
});
