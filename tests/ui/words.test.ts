import { describe, expect, it } from 'vitest';
import { withWorkbook } from '$lib/engine/structure';
import { HITS_NOTHING } from '$lib/engine/state';
import { completionsAt, callAt, complete } from '$lib/ui/editor/complete';
import { draftOf, nameFromLabel, quantityOf } from '$lib/ui/editor/draft';
import { findQuantities } from '$lib/ui/find';
import { agreementWords, frontFacts } from '$lib/ui/front';
import { freeId } from '$lib/ui/members/free-id';
import { checkCount, messagesOf } from '$lib/ui/messages';
import { differing } from '$lib/ui/scenarios/compare';
import { freeTitle, idFrom, fingerprintOf } from '$lib/ui/scenarios/words';
import { othersWords } from '$lib/ui/shared/others-words';
import type { SharedState } from '$lib/ui/shared/words';
import { savedWords } from '$lib/ui/shell/saved';
import { base, cheap, layout, resultsOf, shop } from './shop';

describe('finding a quantity', () => {
	const names = (typed: string) =>
		findQuantities(layout, typed).map((found) => found.quantity.quantity.name);
	it('goes by label and by name, beginnings first', () => {
		expect(names('line')).toEqual(['speed', 'main_line']);
		expect(names('too cheap')).toEqual(['too_cheap']);
		expect(names('RESIN')).toEqual(['price', 'cost']);
		expect(names('nothing like it')).toEqual([]);
		expect(names(' ')).toEqual([]);
	});
});

describe('the strip', () => {
	const facts = (selectedScenario: string, results = cheap) =>
		frontFacts({
			workbook: shop,
			layout,
			results: new Map([
				['base', base],
				['cheap', results]
			]),
			base: 'base',
			selectedScenario,
			subject: 'A15',
			locale: 'en',
			start: null,
			errorOf: () => 'Mass per metre'
		});
	it('shows the subject’s value, and what the workbook says below it', () => {
		expect(facts('cheap')[0]).toMatchObject({
			title: 'A15, resin cost',
			below: '0.06 kg/m of resin',
			beside: 'EUR/m',
			bySubject: true
		});
	});
	it('shows the scenario in hand where the workbook says so', () => {
		expect(facts('cheap')[1]?.figure.text).toBe('0.95');
		expect(facts('base')[1]?.figure.text).toBe('2.02');
	});
	it('says of a scenario without results that it is being computed, and nothing else', () => {
		const [cost, price] = facts('just_made');
		expect(cost?.below).toBe('0.06 kg/m of resin');
		expect([price?.figure.state, price?.below]).toEqual(['pending', 'being computed']);
	});
	it('says whose error a figure inherits', () => {
		const bad = resultsOf('cheap', [{ state: HITS_NOTHING }]);
		expect(facts('cheap', bad)[1]).toMatchObject({
			figure: { text: 'No value', state: 'error' },
			below: 'inherits the error of mass per metre'
		});
	});
	it('says how many values both engines agree on', () => {
		const agreement = {
			compared: 4877,
			agreeing: 4877,
			notCompared: [],
			sample: null,
			disagreements: [],
			busy: false
		};
		expect(agreementWords(agreement, true, 'en')).toBe(
			'4,877 of 4,877 values agree, computed twice'
		);
		expect(agreementWords(agreement, false, 'en')).toMatch(/checking the last edit/);
		expect(agreementWords(null, true, 'en')).toBe('second engine is starting');
		expect(agreementWords(null, false, 'en', true)).toBe('from the shipped copy, being computed');
	});
});

describe('messages below rows', () => {
	it('give a caution in the scenario where it is so', () => {
		const messages = messagesOf({
			layout,
			results: [base, cheap],
			faults: new Map(),
			problems: []
		});
		expect(messages).toMatchObject([
			{ tone: 'caution', scenario: 'cheap', quantity: 'too_cheap', count: 1 }
		]);
		expect(checkCount(layout, cheap, [])).toMatchObject({ cautions: 1, errors: 0 });
	});
	it('caution against a number outside of where it usually lies, and name it', () => {
		const price = layout.byName.get('price')!;
		const quantity = { ...price.quantity, usual: { min: 0.7, max: 1.9 } };
		const bounded = {
			...layout,
			quantities: layout.quantities.map((one) => (one === price ? { ...one, quantity } : one))
		};
		const said = { layout: bounded, results: [base], faults: new Map(), problems: [] };
		expect(messagesOf(said)).toEqual([
			{
				...{ tone: 'caution', scenario: 'base', quantity: 'price', cell: 0, count: 1 },
				text: 'Resin price is 2.02 EUR/kg, usual is at least 0.7 and at most 1.9 EUR/kg. Look at its digits and its unit; if it is right, widen the usual range.'
			}
		]);
		expect(checkCount(bounded, base, [])).toMatchObject({ cautions: 1 });
		// The other scenario has 0.95, within it: its caution is the other quantity's alone.
		expect(checkCount(bounded, cheap, [])).toMatchObject({ cautions: 1 });
	});
	it('give an error once, where it arose', () => {
		const from = { quantity: 'price', members: [], cell: 0 };
		const faults = ['mass', 'cost'].map((quantity) => ({
			quantity,
			cell: layout.byName.get(quantity)!.base,
			count: 2,
			origin: { from, reason: 'No value was entered for resin price.' }
		}));
		const messages = messagesOf({
			layout,
			results: [base],
			faults: new Map([['base', faults]]),
			problems: []
		});
		expect(messages).toMatchObject([{ tone: 'error', quantity: 'price', cell: 0 }]);
	});
});

describe('help with a formula', () => {
	const insert = (text: string) =>
		completionsAt(shop, text, text.length).items.map((item) => item.insert);
	it('offers names by their beginning, their parts and their labels', () => {
		expect(insert('pri')[0]).toBe('price');
		expect(insert('2 * resin')).toEqual(['price', 'cost']);
		expect(insert('su')).toContain('SUM(');
		expect(insert('L')).toContain('L1');
		expect(insert('')).toEqual([]);
	});
	it('replaces the word at the caret alone', () => {
		const offered = completionsAt(shop, 'mas * 2', 3);
		expect(complete('mas * 2', offered, offered.items[0]!)).toEqual({ text: 'mass * 2', caret: 4 });
	});
	it('names the function that the caret is in', () => {
		expect(callAt('SUM(mass * ABS(price); ', 23)?.name).toBe('SUM');
		expect(callAt('(mass', 5)).toBeNull();
	});
});

describe('a quantity in its editor', () => {
	const all = shop.sheets.flatMap((sheet) => sheet.quantities);
	it.each(all.map((one) => [one.name, one] as const))('%s comes back as it went in', (_, one) => {
		expect(quantityOf(draftOf(one, 0, 'en'), one, 'en')).toEqual({ ok: true, quantity: one });
	});
	it('stays open to those who may see open values', () => {
		const one = { ...all[0]!, open: true };
		expect(quantityOf(draftOf(one, 0, 'en'), one, 'en')).toEqual({ ok: true, quantity: one });
	});
	it('gets a name from its label', () => {
		expect(nameFromLabel('Mass per metre, größte')).toBe('mass_per_metre_großte');
		const draft = { ...draftOf(null, 0, 'en'), label: 'Mass per metre' };
		expect(quantityOf(draft, null, 'en')).toMatchObject({ quantity: { name: 'mass_per_metre' } });
	});
	it('is not kept without a label, with an empty formula or a broken range', () => {
		const draft = draftOf(null, 0, 'en');
		expect(quantityOf(draft, null, 'en')).toMatchObject({ ok: false });
		const named = { ...draft, label: 'x' };
		expect(quantityOf({ ...named, follows: 'formula' }, null, 'en')).toMatchObject({ ok: false });
		expect(quantityOf({ ...named, min: '1,2,3' }, null, 'en')).toMatchObject({ ok: false });
		expect(quantityOf({ ...named, digits: '99' }, null, 'en')).toMatchObject({ ok: false });
	});
});

describe('scenarios and members in words', () => {
	it('say on what they stand', () => {
		expect(fingerprintOf(shop, 'base')).toBe('as entered');
		expect(fingerprintOf(shop, 'cheap')).toBe('on base, 1 change');
		const on = { id: 'px', title: 'PX15B halves', parent: 'base', changes: [] };
		const scenarios = [...shop.scenarios, on, { ...on, id: 'more', parent: 'px' }];
		expect(fingerprintOf({ ...shop, scenarios }, 'more')).toBe('on PX15B halves, no changes');
	});
	it('get free titles and ids', () => {
		expect(freeTitle(shop, 'Cheap resin')).toBe('Cheap resin 2');
		expect(idFrom('A weekend crew', new Set(), 'scenario')).toBe('a_weekend_crew');
		expect(idFrom('Base', new Set(['base']), 'scenario')).toBe('base_2');
		expect(idFrom('24', new Set(), 'scenario')).toBe('scenario');
		expect(freeId(shop.sets[1]!, 'L2')).toBe('L3');
		expect(freeId(shop.sets[0]!, 'A15')).toBe('A16');
		expect(freeId(shop.sets[0]!, 'PX15B')).toBe('PX15B 2');
	});
	it('differ only where a value does', () => {
		expect([...differing(layout, base, cheap)]).toEqual(['price', 'cost', 'too_cheap']);
		expect([...differing(layout, base, cheap, 'inputs')]).toEqual(['price']);
		// What a plan decides is not what was entered.
		const programme = { name: 'plan', title: 'Plan', maximise: 'cost', constraints: [] };
		const planned = { ...shop, programmes: [{ ...programme, decisions: ['price'] }] };
		const laid = withWorkbook(layout, planned);
		expect([...differing(laid, base, cheap, 'inputs')]).toEqual([]);
	});
});

describe('the saved time', () => {
	const at = new Date(2026, 10, 24, 14, 2).getTime();
	const sharing = { link: null, state: null, pending: false };
	const saving = { savedAt: at, keepingProblem: '', unsaved: false, sharing };
	const reading = { readOnly: false, readOnlyFor: 'tab', locale: 'en' } as const;
	it('is told to the minute, and only once it is true', () => {
		expect(savedWords(saving, reading)).toBe('saved 14:02');
		expect(savedWords({ ...saving, unsaved: true }, reading)).toBe('saving');
		expect(savedWords({ ...saving, keepingProblem: 'full' }, reading)).toBe('not kept');
		expect(savedWords(saving, { ...reading, readOnly: true })).toBe('read only here');
	});
	it('names the revision of a shared workbook, and what waits where', () => {
		const shared = (state: SharedState['state'], pending = false) =>
			savedWords(
				{ ...saving, savedAt: at + 60_000, sharing: { link: { number: 41, at }, state, pending } },
				reading
			);
		expect(shared({ is: 'in_step' })).toBe('saved 14:02, revision 41');
		expect(shared({ is: 'in_step' }, true)).toBe('kept here, to be sent');
		expect(shared({ is: 'sending' }, true)).toBe('sending');
		expect(shared({ is: 'sending' })).toBe('saved 14:02, revision 41');
		expect(shared({ is: 'offline' }, true)).toBe('kept here, no connection');
		expect(shared({ is: 'asking', conflicts: [] }, true)).toBe('kept here, waits for your choice');
		expect(shared({ is: 'refused', message: 'no' }, true)).toBe('kept here, not sent');
	});
	it('is told to a viewer too, who may change nothing', () => {
		const viewing = { ...reading, readOnly: true, readOnlyFor: 'role' } as const;
		const link = { number: 41, at };
		expect(
			savedWords(
				{ ...saving, sharing: { link, state: { is: 'in_step' }, pending: false } },
				viewing
			)
		).toBe('saved 14:02, revision 41');
	});
});

describe('what others did', () => {
	it('is told in a breath, by name', () => {
		const by = (name: string, ...told: string[]) => ({
			author: { id: null, name },
			changes: told.map((text) => ({ kind: 'told', text }) as const)
		});
		expect(othersWords([by('Anna', 'resin price: 2 to 2.1 EUR/kg')])).toBe(
			'Anna: resin price: 2 to 2.1 EUR/kg'
		);
		expect(othersWords([by('Anna', 'a', 'b'), by('Ben', 'c'), by('Anna', 'd')])).toBe(
			'Anna: a, and 2 more; Ben: c'
		);
		expect(othersWords([by('Anna')])).toBe('Anna saved');
		expect(othersWords([by('You', 'a')], false)).toBe('Another browser: a');
	});
});
