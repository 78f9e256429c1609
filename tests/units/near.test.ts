import { describe, expect, it } from 'vitest';
import { UnitSystem } from '$lib/units/system';

const { system } = UnitSystem.create([{ symbol: 'box' }, { symbol: 'reel', label: 'reel' }]);

describe('an unknown unit', () => {
	it.each([
		['hours', 'h'],
		['hrs', 'h'],
		['minutes', 'min'],
		['kgs', 'kg'],
		['KG', 'kg'],
		['Tonnes', 't'],
		['EURO', 'EUR'],
		['eur', 'EUR'],
		['Euros', 'EUR'],
		['TEUR', 'kEUR'],
		['keur', 'kEUR'],
		['KWH', 'kWh'],
		['d', 'day'],
		['days', 'day'],
		['yr', 'year'],
		['°C', 'K'],
		['metres', 'm'],
		['MM', 'mm'],
		['m2', 'm²'],
		['mm3', 'mm³'],
		['coils', 'coil'],
		['pcs', 'piece'],
		['people', 'person'],
		['palet', 'pallet'],
		['ciol', 'coil'],
		['pesron', 'person'],
		['percent', '%'],
		['boxes', 'box'],
		['Reels', 'reel'],
		['reeel', 'reel']
	])('%s is answered with %s', (typed, meant) => {
		const result = system.parse(`m/${typed}`);
		expect(result).toMatchObject({
			ok: false,
			problem: { code: 'unknown-unit', start: 2, end: 2 + typed.length, nearest: meant }
		});
		expect(!result.ok && result.problem.message).toContain(
			`Unknown unit "${typed}". Write ${meant}.`
		);
		expect(system.nearest(typed)).toBe(meant);
	});

	it('offers only what then is a unit', () => {
		for (const typed of ['hours', 'm2', 'mm3', 'percent', 'TEUR'])
			expect(system.parse(system.nearest(typed) ?? '?').ok).toBe(true);
	});

	it.each(['xyzzy', 'constructor', '__proto__', 'toString', 'hasOwnProperty'])(
		'%s resembles nothing: the message says where units are added',
		(typed) => {
			const result = system.parse(typed);
			expect(result).toMatchObject({ ok: false, problem: { code: 'unknown-unit' } });
			expect(!result.ok && result.problem.message).toBe(
				`Unknown unit "${typed}". Choose one from the list of units, or add "${typed}" to the workbook's own units.`
			);
			expect(!result.ok && result.problem.nearest).toBeUndefined();
		}
	);

	it.each([
		['$', 'The sign $ stands for several currencies: write which one, as in USD.'],
		['kr', 'kr stands for several currencies: write SEK, NOK or DKK.']
	])('%s could be several currencies, so none is offered', (typed, message) => {
		const result = system.parse(typed);
		expect(result).toMatchObject({ ok: false, problem: { message } });
		expect(!result.ok && result.problem.nearest).toBeUndefined();
	});

	it('is told why a day is not 24 h, and °C not a unit', () => {
		const message = (text: string) => {
			const result = system.parse(text);
			return result.ok ? '' : result.problem.message;
		};
		expect(message('d')).toContain('A day is a count of its own');
		expect(message('°C')).toContain('a difference of 1 °C is 1 K');
	});

	it('is nearest to nothing when it is empty', () => {
		expect(system.nearest(' ')).toBeUndefined();
	});
});
