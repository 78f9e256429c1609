import { describe, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { after, plant } from './plant';

const text = saveWorkbook(plant);

describe('a saved workbook', () => {
	it('ends with a line break, is indented by tabs, and holds a pair of a relation on a line', () => {
		expect(text.endsWith('}\n')).toBe(true);
		expect(text).toContain('\n\t"format": "metrewright",\n');
		expect(text).toContain('\n\t\t\t\t["PX15B", "L1"],\n');
		expect(text).not.toMatch(/^ /m);
	});

	it('has its fields in the order of the schema, however it was made', () => {
		const reversed = (value: unknown): unknown => {
			if (Array.isArray(value)) return value.map(reversed);
			if (typeof value !== 'object' || value === null) return value;
			return Object.fromEntries(
				Object.entries(value)
					.reverse()
					.map(([key, one]) => [key, reversed(one)])
			);
		};
		expect(saveWorkbook(reversed(plant) as Workbook)).toBe(text);
	});

	it('has its values in the order of the set, so that moving a member moves its line', () => {
		const moved = saveWorkbook(
			after(plant, { kind: 'move_member', set: 'product', id: 'PX20', index: 0 })
		);
		expect(moved).toMatch(/"PX20": 0\.13,\n\s*"PX15B": 0\.08/);
		expect(text).toMatch(/"PX15B": 0\.08,\n\s*"PX20": 0\.13/);
	});

	it('breaks a list that is too long for a line', () => {
		const sets = Array.from({ length: 4 }, (_, i) => ({
			name: `a_rather_long_name_of_a_set_${i}`,
			label: 'x',
			members: []
		}));
		const long = saveWorkbook({
			...plant,
			sets: [...plant.sets, ...sets],
			relations: [{ name: 'r', sets: sets.map(({ name }) => name), pairs: [] }]
		});
		expect(long).toContain('"sets": [\n\t\t\t\t"a_rather_long_name_of_a_set_0",\n');
		expect(long).toContain('"pairs": []');
	});

	it('leaves out fields that are undefined', () => {
		const workbook = { ...plant, about: undefined } as unknown as Workbook;
		expect(saveWorkbook(workbook)).toBe(text);
	});
});
