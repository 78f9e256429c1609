/** Whatever a study's settings name stands in the table of kinds, so that no name is forgotten when it changes. */
import { describe, expect, it } from 'vitest';
import { partsAt, withPartsAt } from '$lib/workbook/study-parts';
import { STUDY_KINDS, STUDY_PARTS, type Study, type StudyKind } from '$lib/workbook/study-schema';
import { mapStudyNames, studyQuantities } from '$lib/workbook/study-names';
import { scenariosOf } from '$lib/workbook/study-gaps';
import { Dice } from './arbitrary';
import { plant } from './plant';
import { randomStudy } from './random-study';

/** What stands in fields of this name, however deep. */
function inFields(value: unknown, field: string): unknown[] {
	if (typeof value !== 'object' || value === null) return [];
	return Object.entries(value).flatMap(([name, inner]) =>
		name === field && typeof inner === 'string' ? [inner] : inFields(inner, field)
	);
}

const samples = new Map<StudyKind, Study[]>(STUDY_KINDS.map((kind) => [kind, []]));
for (let seed = 0; seed < 600; seed++) {
	const dice = new Dice(Array.from({ length: 40 }, (_, i) => (seed * 7919 + i * 104729) % 9973));
	const study = randomStudy(plant, dice, 's');
	samples.get(study.kind)!.push(study);
}

describe.each(STUDY_KINDS)('a study of the kind %s', (kind) => {
	it('names no quantity that the table does not know', () => {
		expect(samples.get(kind)!.length).toBeGreaterThan(20);
		for (const study of samples.get(kind)!) {
			const renamed = mapStudyNames(study, { quantity: () => 'other' });
			expect(new Set(inFields(renamed, 'quantity'))).toEqual(new Set(['other']));
			expect(new Set(studyQuantities(study))).toEqual(new Set(inFields(study, 'quantity')));
		}
	});

	it('names no scenario that the table does not know', () => {
		for (const study of samples.get(kind)!) {
			const renamed = mapStudyNames(study, { scenario: (id) => `new_${id}` });
			const fields = ['scenario', 'compare', 'from', 'to'].flatMap((field) =>
				inFields(renamed, field)
			);
			expect(fields.length).toBeGreaterThan(0);
			for (const id of fields) expect(id).toMatch(/^new_/);
			expect(scenariosOf(renamed).sort()).toEqual(fields.sort());
		}
	});
});

describe('parts of a study', () => {
	const optimise: Study = {
		...{ name: 's', title: 'S', kind: 'optimise', quantity: 'y', scenario: 'base' },
		direction: 'highest',
		options: [
			{ label: 'A', alternatives: [{ label: 'a', changes: [{ quantity: 'x', value: 1 }] }] },
			{
				label: 'B',
				alternatives: [
					{ label: 'none', changes: [] },
					{ label: 'b', changes: [{ quantity: 'z', value: 2 }] }
				]
			}
		]
	};
	const { changes } = STUDY_PARTS.optimise;

	it('come with their place and with the labels that they stand below', () => {
		expect(partsAt(optimise, changes)).toEqual([
			{
				part: { quantity: 'x', value: 1 },
				place: ['options', 0, 'alternatives', 0, 'changes', 0],
				within: ['A', 'a']
			},
			{
				part: { quantity: 'z', value: 2 },
				place: ['options', 1, 'alternatives', 1, 'changes', 0],
				within: ['B', 'b']
			}
		]);
	});

	it('go out of their list where nothing is put in their place', () => {
		const without = withPartsAt<{ quantity: string }>(optimise, changes, (change) =>
			change.quantity === 'x' ? undefined : change
		);
		expect(partsAt(without, changes).map(({ part }) => part)).toEqual([
			{ quantity: 'z', value: 2 }
		]);
	});
});
