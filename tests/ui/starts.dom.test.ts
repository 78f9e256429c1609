import { describe, expect, it } from 'vitest';
import { layOut, cellAt } from '$lib/engine/layout';
import { ABSENT, DIVIDES_BY_ZERO, NO_ANSWER, OK } from '$lib/engine/state';
import { factsOf } from '$lib/ui/front';
import { figuresOf, type FiguresFinding, type FiguresInput } from '$lib/ui/starts/figures';
import { View } from '$lib/ui/view.svelte';
import type { Start, Workbook } from '$lib/workbook/schema';
import { base, cheap, layout, resultsOf, shop } from './shop';

const finding = (...quantities: string[]): FiguresFinding => ({
	kind: 'figures',
	title: 'At {price}',
	quantities
});
const input: FiguresInput = { layout, base, hand: cheap, subject: 'A15', locale: 'en' };
const lineOf = (name: string, more: Partial<FiguresInput> = {}) =>
	figuresOf({ ...input, ...more }, finding(name)).lines[0]!;

describe('a figure of a starting view', () => {
	it('stands for the subject, with its unit and what the scenario in hand changes', () => {
		const line = lineOf('cost');
		expect(line.label).toBe('Resin cost');
		expect(line.figure).toMatchObject({ text: '0.1212', unit: 'EUR/m' });
		// 0.95 × 0.06 = 0.057
		expect(line.change).toEqual({
			same: false,
			difference: '−0.0642',
			relative: '−53.0 %',
			instead: '',
			stale: null
		});
	});

	it('tells no difference, and no "same", where it rests on a plan that does not answer', () => {
		const inCheap = {
			of: (scenario: string) => (scenario === 'cheap' ? 'refused' : null)
		} as const;
		for (const name of ['cost', 'mass'])
			expect(lineOf(name, { stale: inCheap })).toMatchObject({
				stale: null,
				change: { same: false, difference: '', relative: '', instead: '', stale: 'refused' }
			});
		// Marked itself, it needs no second mark beside it.
		const inBase = { of: (scenario: string) => (scenario === 'base' ? 'kept' : null) } as const;
		expect(lineOf('cost', { stale: inBase })).toMatchObject({ stale: 'kept', change: null });
		const { tables } = figuresOf({ ...input, stale: inBase }, finding('speed'));
		expect(tables[0]?.rows[0]?.cells.map(({ stale }) => stale)).toEqual(['kept', 'kept']);
	});

	it('says "same" where the scenario changes nothing, or nothing that would show', () => {
		expect(lineOf('mass').change).toMatchObject({ same: true, difference: '' });
		const nearly = resultsOf('cheap', [2.0200001, 0.06, 0.1, 0.1212, 0.202, 30, 28, 20, 0, 0, 0]);
		expect(lineOf('price', { hand: nearly }).change).toMatchObject({ same: true });
	});

	it('shows nothing of what rounding left, nor tells it as a difference', () => {
		const left = resultsOf('cheap', [2.02, 0.06, 0.1, 3.958e-9, 0.2, 30, 28, 20, 0, 0, 0]);
		const none = resultsOf('base', [2.02, 0.06, 0.1, 0, 0.2, 30, 28, 20, 0, 0, 0]);
		expect(lineOf('cost', { base: left }).figure.text).toBe('0');
		expect(lineOf('cost', { base: none, hand: left }).change).toMatchObject({ same: true });
	});

	it('gives words in place of a difference for a choice or a yes and no', () => {
		expect(lineOf('too_cheap')).toMatchObject({
			figure: { text: 'no' },
			change: { same: false, instead: 'yes', difference: '' }
		});
	});

	it('says that there is no value, and no answer, in the scenario in hand', () => {
		const broken = resultsOf('cheap', [
			...[{ state: DIVIDES_BY_ZERO }, 0.06, 0.1, 0.1212, 0.202],
			...[30, 28, 20, 0, 0, { state: NO_ANSWER }]
		]);
		expect(lineOf('price', { hand: broken }).change).toMatchObject({ instead: 'No value' });
		expect(lineOf('too_cheap', { hand: broken }).change).toMatchObject({ instead: 'none' });
	});

	it('has nothing beside it where no scenario is compared', () => {
		expect(
			figuresOf({ layout, base, hand: undefined, subject: 'A15', locale: 'en' }, finding('cost'))
				.lines[0]?.change
		).toBeNull();
	});

	it('waits for its results', () => {
		const early = { layout, base: undefined, hand: undefined, subject: 'A15', locale: 'en' };
		expect(figuresOf(early, finding('cost')).lines[0]?.figure.state).toBe('pending');
		expect(figuresOf(early, finding('speed')).tables[0]?.rows[0]?.cells[0]?.text).toBe('…');
	});
});

describe('figures of one set', () => {
	it('stand beside each other, at the subject', () => {
		const { lines, tables, title } = figuresOf(input, finding('speed'));
		expect(title).toBe('At 2.02 EUR/kg');
		expect(lines).toEqual([]);
		expect(tables[0]?.members.map(({ id }) => id)).toEqual(['L1', 'L2']);
		expect(tables[0]?.rows[0]).toMatchObject({ label: 'Line speed', unit: 'm/min' });
		expect(tables[0]?.rows[0]?.cells.map(({ text }) => text)).toEqual(['30', '28']);
		const place = layout.byName.get('speed')!;
		expect(tables[0]?.rows[0]?.cells[1]?.cell).toBe(cellAt(place, [0, 1]));
	});

	it('leave out members that are not there, and show an error as one', () => {
		const some = resultsOf('base', [
			...[2.02, 0.06, 0.1, 0.1212, 0.202, { state: DIVIDES_BY_ZERO }, { state: ABSENT }],
			...[20, 0, 0, 0]
		]);
		const { tables } = figuresOf({ ...input, base: some }, finding('speed'));
		expect(tables[0]?.members.map(({ id }) => id)).toEqual(['L1']);
		expect(tables[0]?.rows[0]?.cells).toMatchObject([{ text: 'No value', isError: true }]);
	});

	it('become one span where there are too many, or further sets', () => {
		const members = Array.from({ length: 20 }, (_, i) => ({ id: `L${i + 1}` }));
		const many: Workbook = {
			...shop,
			sets: [shop.sets[0]!, { ...shop.sets[1]!, members }],
			relations: [],
			sheets: [
				{
					title: 'Line',
					quantities: [{ name: 'width', label: 'Width', unit: 'm', per: ['line'], value: 1 }]
				}
			]
		};
		const wide = layOut(many);
		const results = {
			scenario: 'base',
			values: Float64Array.from({ length: wide.cells }, (_, i) => i + 1),
			states: new Uint8Array(wide.cells).fill(OK)
		};
		const { lines, tables } = figuresOf(
			{ layout: wide, base: results, hand: undefined, subject: null, locale: 'en' },
			finding('width')
		);
		expect(tables).toEqual([]);
		expect(lines[0]?.figure).toMatchObject({ text: '1 to 20', cell: null });
		expect(figuresOf({ ...input, subject: null }, finding('speed')).lines).toHaveLength(1);
	});
});

const starts: Start[] = [
	{ id: 'manager', title: 'Manager', findings: [], facts: [{ quantity: 'price', title: 'Price' }] },
	{ id: 'finance', title: 'Finance', findings: [] }
];
const withStarts: Workbook = { ...shop, starts };

describe('the starting view', () => {
	it('has its own facts in the strip, or those of the front', () => {
		expect(factsOf(withStarts, 'manager').map(({ title }) => title)).toEqual(['Price']);
		expect(factsOf(withStarts, 'finance')).toBe(shop.front!.facts);
		expect(factsOf(withStarts, null)).toBe(shop.front!.facts);
	});

	it('is kept with what a reader has open, as far as the workbook still has it', () => {
		const view = new View();
		view.begin(withStarts, null);
		expect(view.start).toBeNull();
		view.start = 'finance';
		const { kept } = view;
		view.begin(withStarts, kept);
		expect(view.start).toBe('finance');
		view.begin(shop, kept);
		expect(view.start).toBeNull();
		view.begin(withStarts, kept);
		view.follow({ ...withStarts, starts: [starts[0]!] });
		expect(view.start).toBeNull();
	});
});
