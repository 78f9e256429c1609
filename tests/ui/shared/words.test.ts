/** The words of sharing: conflicts, revisions to choose from, a value's history, open values. */
import { describe, expect, it } from 'vitest';
import type { ValueChange } from '$lib/protocol/answers';
import type { Conflict } from '$lib/workbook/merge';
import { browserWords } from '$lib/ui/shared/browser-words';
import { conflictView } from '$lib/ui/shared/conflict-words';
import { openLines } from '$lib/ui/shared/open-values';
import { revisionOptions } from '$lib/ui/shared/revision-options';
import { enteredWords } from '$lib/ui/shared/entered-words';
import { changesOf } from '$lib/ui/shared/value-history';
import { shop } from '../shop';

const view = (conflict: Omit<Conflict, 'key'>) =>
	conflictView({ key: 'k', ...conflict }, [shop], 'en');

describe('a conflict', () => {
	it('shows both values and the one before, with the unit', () => {
		expect(
			view({
				reason: 'both_changed',
				path: ['quantities', 'mass', 'value', 'A15'],
				base: 0.06,
				mine: 0.065,
				theirs: null
			})
		).toEqual({
			key: 'k',
			title: 'Mass per metre, A15',
			why: '',
			base: '0.06 kg/m',
			mine: '0.065 kg/m',
			theirs: 'not entered'
		});
	});
	it('names the scenario that a value was changed in', () => {
		const path = ['scenarios', 'cheap', 'changes', 'price', 'value'];
		const { title, mine } = view({ reason: 'both_changed', path, mine: 1.9, theirs: 1.8 });
		expect(title).toBe('Resin price, in Cheap resin');
		expect(mine).toBe('1.9 EUR/kg');
	});
	it('says what of a quantity it is about, and that it was taken away', () => {
		expect(
			view({
				reason: 'both_changed',
				path: ['quantities', 'cost', 'formula'],
				base: 'price * mass',
				mine: 'price * mass * 2',
				theirs: 'mass'
			})
		).toMatchObject({ title: 'Resin cost: formula', mine: 'price * mass * 2', theirs: 'mass' });
		expect(
			view({
				reason: 'removed_and_changed',
				path: ['quantities', 'cost'],
				base: { name: 'cost', unit: 'EUR/m' },
				theirs: { name: 'cost', unit: 'EUR/km' }
			})
		).toMatchObject({
			title: 'Resin cost',
			mine: 'taken away',
			theirs: 'name: cost, unit: EUR/km',
			why: 'One took it away, the other changed it.'
		});
	});
	it('gives the reason where two values do not say it', () => {
		const unsound = view({
			reason: 'unsound',
			path: ['workbook', 'unknown-name'],
			message: 'cost reads "mass", which is gone.'
		});
		expect(unsound).toMatchObject({
			title: 'The workbook as a whole',
			why: 'cost reads "mass", which is gone.',
			mine: 'as you have it',
			theirs: 'as it is on the server'
		});
		const order = view({
			reason: 'order',
			path: ['sheets', 'Material', 'quantities', 'order'],
			mine: ['price', 'mass'],
			theirs: ['mass', 'price']
		});
		expect(order.title).toMatch(/^Sheet, Material/);
		expect(order.mine).toBe('price, mass');
	});
	it('reads names of any kind', () => {
		const path = ['quantities', 'constructor', '__proto__'];
		expect(view({ reason: 'both_changed', path, mine: 1, theirs: 2 })).toMatchObject({
			title: 'constructor: __proto__',
			mine: '1'
		});
	});
});

describe('a value', () => {
	const kind = (type: object) => ({ name: 'q', label: 'Q', ...type }) as never;
	it('is told with its unit, as a member’s label or as a date', () => {
		expect(enteredWords(0.1, kind({ unit: 'kg/m' }), [shop], 'de')).toBe('0,1 kg/m');
		const product = kind({ type: { member_of: 'product' } });
		expect(enteredWords('A15', product, [shop], 'en')).toBe('Pipe of 15 mm');
		expect(enteredWords('B22', product, [shop], 'en')).toBe('B22');
		expect(enteredWords('gone', product, [shop], 'en')).toBe('gone');
		expect(enteredWords(46388, kind({ unit: 'day', shown: 'date' }), [shop], 'en')).toMatch(
			/20\d\d/
		);
		expect(enteredWords(true, null, [], 'en')).toBe('yes');
		expect(enteredWords(undefined, null, [], 'en')).toBe('nothing entered');
	});
	it('has the changes of its own place, and of those entered for all members at once', () => {
		const change = (scenario: string, ...at: string[]): ValueChange => ({
			quantity: 'mass',
			scenario,
			at,
			number: 1,
			madeAt: 0,
			author: { id: null, name: 'Anna' },
			reason: ''
		});
		const own = change('base', 'A15');
		const all = change('base');
		const cheap = change('cheap', 'A15');
		const changes = [own, change('base', 'B22'), all, cheap, change('other', 'A15')];
		expect(changesOf(changes, ['A15'], ['base'])).toEqual([own, all]);
		expect(changesOf(changes, ['A15'], ['cheap', 'base'])).toEqual([own, all, cheap]);
	});
});

describe('revisions to choose from', () => {
	it('begin with those that have a name, each once', () => {
		const revision = (number: number, name: string | null = null, reason = '') => ({
			number,
			name,
			reason
		});
		const budget = revision(2, 'budget 2027');
		expect(
			revisionOptions([revision(4), revision(3, null, 'new contract'), budget], [budget])
		).toEqual([
			{ value: '2', text: 'budget 2027 (revision 2)' },
			{ value: '4', text: 'revision 4, the newest' },
			{ value: '3', text: 'revision 3, new contract' }
		]);
	});
});

describe('open values', () => {
	it('are one line each, rounded, with members and unit', () => {
		const lines = openLines(
			[
				{ name: 'cost', label: 'Cost', unit: 'EUR/m', values: { A15: { L1: 0.12345678 } } },
				{ name: 'ok', label: '', value: true },
				{ name: 'x', label: 'X', values: { A15: { error: 'no value' }, B22: 2 } }
			],
			'en'
		);
		expect(lines).toEqual([
			{ label: 'Cost', at: 'A15, L1', value: '0.12346 EUR/m' },
			{ label: 'ok', at: '', value: 'yes' },
			{ label: 'X', at: 'A15', value: 'no value' },
			{ label: 'X', at: 'B22', value: '2' }
		]);
	});
});

describe('a browser in the list of sessions', () => {
	it('is called by what it said it was', () => {
		expect(
			browserWords('Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0')
		).toBe('Firefox on Linux');
		expect(browserWords('curl/8')).toBe('a browser or program');
	});
});
