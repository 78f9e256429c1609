import { expect, it } from 'vitest';
import { changeText } from '$lib/ui/shared/change-text';

const dearer = { kind: 'value', label: 'Resin price', at: [], was: 1950, now: 2100.5 } as const;

it('writes the numbers of a change list as its reader does, whoever made the revision', () => {
	expect(changeText({ ...dearer, unit: 'EUR/t' }, 'en')).toBe(
		'Resin price: 1,950 to 2,100.5 EUR/t'
	);
	expect(changeText({ ...dearer, unit: 'EUR/t' }, 'de')).toBe(
		'Resin price: 1.950 to 2.100,5 EUR/t'
	);
});

it('writes a date as a date and a year without grouping', () => {
	const moved = { ...dearer, label: 'Start', was: null, unit: 'day' };
	expect(changeText({ ...moved, now: 46023, shown: 'date' }, 'en')).toBe(
		'Start: nothing entered to 2026-01-01'
	);
	expect(changeText({ ...moved, now: 2027, shown: 'year' }, 'en')).toBe(
		'Start: nothing entered to 2027'
	);
});
