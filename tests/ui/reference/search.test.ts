/** What the reference shows for the words that a reader typed. */
import { describe, expect, it } from 'vitest';
import { FUNCTIONS } from '$lib/formula/functions';
import { shownFor } from '$lib/ui/reference/search';
import { KNOWN } from '$lib/units/known';

const OWN = [{ symbol: 'rack', label: 'coil rack', equals: '12 coil' }, { symbol: 'HUF' }];
const namesFor = (typed: string) => {
	const { gathering, others, units, own } = shownFor(typed, OWN);
	return [
		...[...gathering, ...others].map(({ name }) => name),
		...[...units, ...own].map(({ symbol }) => symbol)
	];
};

describe('the reference', () => {
	it('shows everything for no words, gathering functions apart', () => {
		const { gathering, others, units, own } = shownFor('  ', OWN);
		expect(gathering.length + others.length).toBe(FUNCTIONS.size);
		expect(gathering.map(({ name }) => name)).toContain('NPV');
		expect(others.map(({ name }) => name)).toContain('ROUND');
		expect(units).toHaveLength(KNOWN.length);
		expect(own).toEqual(OWN);
	});

	it.each([
		['npv', ['NPV']],
		['kilowatt', ['kWh', 'kW']],
		['share lies', ['NORMDIST', 'NORMINV']],
		['€', ['EUR', 'kEUR', 'MEUR']],
		['pressure', ['bar', 'Pa', 'kPa', 'MPa']],
		['coil rack', ['rack']],
		['12 coil', ['rack']],
		['huf', ['HUF']],
		['nothing of the kind', []]
	])('for "%s" shows %j', (typed, names) => {
		expect(namesFor(typed)).toEqual(names);
	});
});
