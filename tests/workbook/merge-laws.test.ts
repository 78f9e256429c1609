/** Laws of merging over random workbooks and random edits of every kind. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/commands';
import { compareWorkbooks } from '$lib/workbook/compare';
import { findProblems } from '$lib/workbook/consistency';
import { findQuantity } from '$lib/workbook/lookup';
import { loadWorkbook } from '$lib/workbook/load';
import { mergeWorkbooks, type Conflict, type Side } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import { withoutFollowingPlans } from '$lib/workbook/plans';
import type { Workbook } from '$lib/workbook/schema';
import { dice, MAKERS, randomWorkbook, type Dice } from './arbitrary';
import { atomsOf as allAtomsOf, changedPlaces } from './atoms';

const kinds = Object.values(MAKERS);

/** A plan that follows is nobody's work: it is made from the rest, and made anew where it no longer fits. */
const atomsOf = (workbook: Workbook) => allAtomsOf(withoutFollowingPlans(workbook));

/** A random person's work: a few edits, those that are refused left out. */
function worked(workbook: Workbook, dice: Dice, edits: number): Workbook {
	let here = workbook;
	for (let i = 0; i < edits; i++) {
		const command = (dice.chance(50) ? MAKERS.set_inputs : dice.pick(kinds))(here, dice);
		if (!command) continue;
		const result = applyCommand(here, command);
		if (result.ok) here = result.workbook;
	}
	return here;
}

const three = dice.map((dice) => {
	const base = randomWorkbook(dice);
	return {
		base,
		mine: worked(base, dice, 1 + dice.roll(4)),
		theirs: worked(base, dice, 1 + dice.roll(4))
	};
});

/** Whether a person was told that everything is decided at once. */
const isWhole = ({ reason, path }: Conflict) =>
	reason === 'unsound' || (reason === 'meaning' && path[0] === 'scenarios');

const runs = { numRuns: 200 };
/** Many rounds, on a machine that may be busy. */

describe('a merge', () => {
	it('without conflicts has every change of both, and no other', () => {
		let merges = 0;
		fc.assert(
			fc.property(three, ({ base, mine, theirs }) => {
				const { workbook, conflicts } = mergeWorkbooks({ base, mine, theirs });
				if (conflicts.length > 0) return;
				merges++;
				const [was, one, other, made] = [base, mine, theirs, workbook].map(atomsOf);
				const byMine = new Set(changedPlaces(was!, one!));
				const byTheirs = new Set(changedPlaces(was!, other!));
				for (const place of byMine)
					if (!isElsewhere(place, base, mine, theirs))
						expect(made!.get(place), place).toBe(one!.get(place));
				for (const place of byTheirs)
					if (!isElsewhere(place, base, mine, theirs))
						expect(made!.get(place), place).toBe(other!.get(place));
				for (const place of changedPlaces(was!, made!))
					expect(byMine.has(place) || byTheirs.has(place), place).toBe(true);
			}),
			runs
		);
		expect(merges).toBeGreaterThan(50);
	});

	it.each(['mine', 'theirs'] as const)(
		'where %s is to stand has every change of that side',
		(side) => {
			let asked = 0;
			fc.assert(
				fc.property(three, ({ base, mine, theirs }) => {
					const told: Conflict[] = [];
					const choose = (conflict: Conflict): Side => {
						told.push(conflict);
						return side;
					};
					const { workbook, conflicts } = mergeWorkbooks({ base, mine, theirs }, choose);
					expect(conflicts).toEqual([]);
					if (told.length > 0) asked++;
					const own = side === 'mine' ? mine : theirs;
					if (told.some(isWhole)) {
						expect(workbook).toBe(own);
						return;
					}
					const [was, one, made] = [base, own, workbook].map(atomsOf);
					for (const place of changedPlaces(was!, one!))
						if (!isElsewhere(place, base, mine, theirs))
							expect(made!.get(place), place).toBe(one!.get(place));
				}),
				runs
			);
			expect(asked).toBeGreaterThan(25);
		}
	);

	it('is sound, is saved and opened again, and is the same whoever is called mine', () => {
		fc.assert(
			fc.property(three, ({ base, mine, theirs }) => {
				const { workbook, conflicts } = mergeWorkbooks({ base, mine, theirs });
				const swapped = mergeWorkbooks({ base, mine: theirs, theirs: mine });
				expect(swapped.conflicts.length === 0).toBe(conflicts.length === 0);
				expect(findProblems(workbook)).toEqual([]);
				const again = loadWorkbook(saveWorkbook(workbook), 'merged');
				expect(again.ok).toBe(true);
				if (conflicts.length === 0) expect(atomsOf(swapped.workbook)).toEqual(atomsOf(workbook));
			}),
			runs
		);
	});

	it('of many people, in any order, loses none of their entries', () => {
		fc.assert(
			fc.property(dice, (dice) => {
				const start = randomWorkbook(dice);
				let head = start;
				const versions = [start];
				const people = Array.from({ length: 4 }, () => ({ base: start, own: start }));
				const lost: string[] = [];
				for (let turn = 0; turn < 16; turn++) {
					const person = people[dice.roll(people.length)]!;
					const next = worked(person.own, dice, 1);
					const wanted = changedPlaces(atomsOf(person.own), atomsOf(next));
					const { workbook, conflicts } = mergeWorkbooks(
						{ base: person.base, mine: next, theirs: head },
						() => 'mine'
					);
					expect(conflicts).toEqual([]);
					const [made, own] = [atomsOf(workbook), atomsOf(next)];
					for (const place of wanted)
						if (!isElsewhere(place, person.base, next, head) && made.get(place) !== own.get(place))
							lost.push(place);
					head = workbook;
					versions.push(head);
					person.base = head;
					person.own = head;
				}
				expect(lost).toEqual([]);
			}),
			{ numRuns: 60 }
		);
	});
});

const hasChange = ({ scenarios }: Workbook, id: string, name: string): boolean =>
	scenarios.some((one) => one.id === id && one.changes.some(({ quantity }) => quantity === name));

/**
 * A sheet's places go by its title: where one side changed that, they are elsewhere, not lost. And where a quantity
 * was moved is of no account once the other side has removed it. What a programme or a fit names follows what was renamed.
 * A note on a scenario's change goes with the change, where the other side took that back.
 */
function isElsewhere(place: string, base: Workbook, ...sides: Workbook[]): boolean {
	const [kind, name, quantity] = JSON.parse(place) as string[];
	const differ = (words: (workbook: Workbook) => string[]) =>
		sides.some((side) => words(base).sort().join('\u0001') !== words(side).sort().join('\u0001'));
	if (kind === 'top' && name === 'programmes')
		return differ(({ sheets }) =>
			sheets.flatMap(({ quantities }) => quantities.map((q) => q.name))
		);
	if (kind === 'fit')
		return differ(({ sets, sheets }) => [
			...sheets.flatMap(({ quantities }) => quantities.map((q) => q.name)),
			...sets.flatMap(({ name, members }) => members.map(({ id }) => `${name} ${id}`))
		]);
	if (kind === 'change') return sides.some((side) => !hasChange(side, name!, quantity!));
	if (kind !== 'sheet' && kind !== 'sheet of') return false;
	if (differ(({ sheets }) => sheets.map(({ title }) => title))) return true;
	return kind === 'sheet of' && sides.some((side) => !findQuantity(side, name!));
}

describe('a comparison', () => {
	it('has a line wherever anything differs, and none where nothing does', () => {
		fc.assert(
			fc.property(three, ({ base, mine }) => {
				expect(compareWorkbooks(mine, mine)).toEqual({ lines: [], values: [] });
				const differs = changedPlaces(atomsOf(base), atomsOf(mine)).length > 0;
				const { lines } = compareWorkbooks(base, mine);
				if (differs) expect(lines).not.toEqual([]);
			}),
			runs
		);
	});
});
