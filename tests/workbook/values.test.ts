import { describe, expect, it } from 'vitest';
import type { Values } from '$lib/workbook/schema';
import { flatten, layered, valueAt, withValueAt, withValues } from '$lib/workbook/values';

const speeds: Values = { PX15B: { L1: 23, L2: null }, PX20: { L1: 18 } };

describe('reading', () => {
	it('finds what stands at the members', () => {
		expect(valueAt(speeds, ['PX15B', 'L1'])).toBe(23);
	});

	it('tells a cleared cell from one where nothing stands', () => {
		expect(valueAt(speeds, ['PX15B', 'L2'])).toBeNull();
		expect(valueAt(speeds, ['PX20', 'L2'])).toBeUndefined();
	});

	it('finds no value halfway, nor below one', () => {
		expect(valueAt(speeds, ['PX15B'])).toBeUndefined();
		expect(valueAt(speeds, ['PX15B', 'L1', 'x'])).toBeUndefined();
		expect(valueAt(undefined, [])).toBeUndefined();
	});

	it('finds nothing that objects inherit', () => {
		expect(valueAt({}, ['constructor'])).toBeUndefined();
		expect(valueAt({}, ['__proto__'])).toBeUndefined();
	});
});

describe('writing', () => {
	it('gives new values, shares what it does not touch, and leaves the old as they were', () => {
		const next = withValueAt(speeds, ['PX20', 'L1'], 19) as { [product: string]: Values };
		expect(valueAt(next, ['PX20', 'L1'])).toBe(19);
		expect(valueAt(speeds, ['PX20', 'L1'])).toBe(18);
		expect(next['PX15B']).toBe(speeds['PX15B']);
	});

	it('makes the objects that are needed, and takes out those left without a value', () => {
		expect(withValueAt(undefined, ['PX15B', 'L1'], 23)).toEqual({ PX15B: { L1: 23 } });
		expect(withValueAt({ PX15B: { L1: 23 } }, ['PX15B', 'L1'], undefined)).toBeUndefined();
		expect(withValueAt(speeds, ['PX20', 'L1'], undefined)).toEqual({ PX15B: { L1: 23, L2: null } });
	});

	it('sets and clears the one value of a quantity that is per nothing', () => {
		expect(withValueAt(1.95, [], 2.1)).toBe(2.1);
		expect(withValueAt(1.95, [], undefined)).toBeUndefined();
	});

	it('does nothing where nothing was to be taken out', () => {
		expect(withValueAt(speeds, ['PX20', 'L9'], undefined)).toBe(speeds);
	});

	it('holds members of any name', () => {
		const values = withValues(undefined, [
			{ at: ['__proto__', 'constructor'], value: 1 },
			{ at: ['toString', '__proto__'], value: 2 }
		]);
		expect(valueAt(values, ['__proto__', 'constructor'])).toBe(1);
		expect(valueAt(values, ['toString', '__proto__'])).toBe(2);
		expect(Object.keys(values as object)).toEqual(['__proto__', 'toString']);
		expect(withValueAt(values, ['__proto__', 'constructor'], undefined)).toEqual({
			toString: JSON.parse('{"__proto__": 2}')
		});
	});

	it('copies each object once, however many cells are written in it', () => {
		const members = Array.from({ length: 100_000 }, (_, i) => `P${i}`);
		let copies = 0;
		const counting = new Proxy(
			{ P0: -1 },
			{
				ownKeys(target) {
					copies++;
					return Reflect.ownKeys(target);
				}
			}
		);
		const values = withValues(
			counting,
			members.map((id, i) => ({ at: [id], value: i }))
		);
		expect(copies).toBe(1);
		expect(valueAt(values, ['P99999'])).toBe(99_999);
	});
});

it('flattened, every cell stands with its members', () => {
	expect(flatten(speeds)).toEqual([
		{ at: ['PX15B', 'L1'], value: 23 },
		{ at: ['PX15B', 'L2'], value: null },
		{ at: ['PX20', 'L1'], value: 18 }
	]);
	expect(flatten(1.95)).toEqual([{ at: [], value: 1.95 }]);
	expect(flatten(undefined)).toEqual([]);
});

it('layered, the upper values hold where they say anything, cleared cells included', () => {
	expect(layered(speeds, { PX15B: { L1: null }, PX20: { L2: 17 } })).toEqual({
		PX15B: { L1: null, L2: null },
		PX20: { L1: 18, L2: 17 }
	});
});
