/** Papers made of workbooks: what decides comes first, of what was chosen alone, in the digits of the screen. */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { headlineOf, verdictOf, verdictText } from '$lib/papers/headline';
import { makePaper } from '$lib/papers/make';
import type { Making } from '$lib/papers/making';
import { papersOf } from '$lib/papers/named';
import { paperText, type Paper } from '$lib/papers/paper';
import { UnitSystem } from '$lib/units/system';
import type { PaperPicture } from '$lib/workbook/paper-schema';
import { NO_ANSWER } from '$lib/engine/state';
import type { Open } from '$lib/ui/figure/open';
import { viewCell } from '$lib/ui/cells';
import { casesOf } from '$lib/ui/pictures/payback/payback';
import { FIGURES, rowFigure } from '$lib/ui/pictures/payback/payback-table';
import { openShipped } from '../reference/shipped';
import { cases, openWith, paybackPicture, type Written } from '../ui/pictures/hand';

const workbook = { ...cases, pictures: [paybackPicture] };

const none = { state: NO_ANSWER };
const years = (values: readonly number[]) =>
	Object.fromEntries(values.map((value, at) => [`y${at}`, value]));
/** Back after 3.4 years, and below what capital costs. */
const slow: Written = {
	cash: years([-5e5, -3.5e5, -2e5, -6e4, 9e4]),
	cash_discounted: years([-5e5, -3.7e5, -2.5e5, -1.6e5, -6e4]),
	...{ payback: 3.4, discounted_payback: none, outlay: 5e5, npv: -132_853, irr: 4.2 },
	...{ annual: -3e4, life: 4, small: 0 }
};
const good: Written = {
	cash: years([-1e6, -6e5, -2e5, 2e5, 6e5]),
	cash_discounted: years([-1e6, -6.4e5, -3e5, 0, 2.8e5]),
	...{ payback: 2.5, discounted_payback: 3, outlay: 1e6, npv: 2.8e5, irr: 21.9, annual: 9e4 },
	...{ life: 4, small: 0 }
};
const base: Written = { outlay: 0, payback: none, discounted_payback: none, npv: 0, life: 4 };
const scale = { factor: 0.001, unit: 'kEUR' };

const picture: PaperPicture = {
	...{ kind: 'paper', name: 'case', title: 'Case', question: 'Shall we?' },
	sections: [{ kind: 'case', title: 'What it comes to' }]
};

function making(open: Open, of: Partial<Making> = {}): Making {
	return {
		...{ open, picture, scenarios: ['line'], said: {}, date: '2026-11-30' },
		...{ revision: null, behind: '', found: new Map() },
		...of
	};
}

function paperOf(asked: Making): Paper {
	const made = makePaper(asked);
	if (!made.ok) throw new Error(made.message);
	return made.paper;
}

function openOf(model: Model): Open {
	const { scenarios } = model.workbook;
	return {
		layout: model.layout,
		results: new Map(scenarios.map(({ id }) => [id, model.results(id)])),
		faults: new Map(),
		units: UnitSystem.create(model.workbook.units ?? []).system,
		...{ locale: 'en', base: scenarios[0]!.id, selectedScenario: scenarios[0]!.id }
	};
}

describe('the headline', () => {
	const found = (written: Readonly<Record<string, Written>>) =>
		casesOf({ picture: paybackPicture, ...openWith(workbook, written, 'base') }).cases;

	it('never reads as good news where the net present value is negative', () => {
		const [one] = found({ base, line: slow, both: base, rewinder: base });
		expect(verdictOf(one!)).toBe('loses');
		const text = verdictText(one!, scale, 'en');
		expect(text).toMatch(
			/^\S.* would not earn its cost of capital: the net present value is −133 kEUR/
		);
		expect(text).toContain('although its money would be back in 3.4 years');
		expect(headlineOf([one!], scale, 'en')).toBe(text);
	});

	it('says what a case earns beyond its cost of capital, and when its money is back', () => {
		const [one] = found({ base, line: good, both: base, rewinder: base });
		expect(verdictText(one!, scale, 'en')).toContain(
			'would earn its cost of capital and +280 kEUR besides; its money would be back in 2.5 years, discounted in 3.0 years'
		);
	});

	it('of several names the best by net present value, and those that lose', () => {
		const two = found({ base, line: slow, both: good, rewinder: base });
		const [line, both] = two.map(({ title }) => title);
		expect(headlineOf(two, scale, 'en')).toBe(
			`Of two options, ${both} would earn most beyond its cost of capital: +280 kEUR. Below their cost of capital: ${line}.`
		);
		const losing = found({ base, line: slow, both: slow, rewinder: base });
		expect(headlineOf(losing, scale, 'en')).toMatch(
			/^None of the two options would earn its cost of capital\./
		);
	});
});

describe('a paper of a case', () => {
	const written = { base, line: slow, both: good, rewinder: base };
	const open = openWith(workbook, written, 'base');

	it('speaks of the chosen scenario and what it is compared with alone', () => {
		const text = paperText(paperOf(making(open)));
		const titles = new Map(open.layout.workbook.scenarios.map(({ id, title }) => [id, title]));
		expect(text).toContain(titles.get('line'));
		expect(text).toContain(titles.get('base'));
		expect(text).not.toContain(titles.get('both'));
	});

	it('says the question, who made it, what is open and left out; and the workbook’s question where nobody asks', () => {
		const said = {
			...{ question: 'Do we buy it?', author: 'A. Person' },
			...{ openPoints: ['The hall', ' '], leftOut: ['The old line'] }
		};
		const paper = paperOf(making(open, { said, revision: 7 }));
		const text = paperText(paper);
		for (const words of ['Do we buy it?', 'A. Person', 'revision 7', 'The hall', 'The old line'])
			expect(text).toContain(words);
		expect(paper.author).toBe('A. Person');
		expect(text).not.toContain('Shall we?');
		expect(paperText(paperOf(making(open)))).toContain('Shall we?');
	});

	it('says of a scenario without an investment that there is no case, and what to do', () => {
		const made = makePaper(making(open, { scenarios: ['rewinder'] }));
		expect(made).toMatchObject({ ok: false });
		expect(!made.ok && made.message).toMatch(/no investment.*Choose a scenario/);
	});

	it('says first that figures rest on a plan that does not answer', () => {
		const paper = paperOf(making(open, { behind: 'Figures here are out of date.' }));
		expect(paper.blocks[1]).toMatchObject({
			weight: 'caution',
			text: 'Figures here are out of date.'
		});
	});
});

describe('papers of the shipped plant', () => {
	const model = openShipped('marram');
	const open = openOf(model);
	const papers = papersOf(model.workbook);

	it('has the digits of the page of payback and of the grid', () => {
		const investment = papers.find((one) => one.sections.some(({ kind }) => kind === 'case'))!;
		const paper = paperOf(making(open, { picture: investment, scenarios: ['new_line'] }));
		const payback = model.workbook.pictures!.find((one) => one.kind === 'payback')!;
		const one = casesOf({ ...open, picture: payback }).cases.find(({ id }) => id === 'new_line')!;
		const table = paper.blocks.find(
			(block) => block.kind === 'table' && block.columns.length === FIGURES.length + 1
		);
		expect(table?.kind === 'table' && table.rows[0]!.cells.slice(1)).toEqual(
			FIGURES.map((name) => rowFigure(one, name, scale, 'en').text)
		);
		// Every figure of the part by year as the grid says it.
		const section = investment.sections.find(({ kind }) => kind === 'table')!;
		const quantity = model.layout.byName.get(section.quantities![0]!)!;
		const results = open.results.get('new_line')!;
		const context = {
			layout: model.layout,
			quantity,
			locale: 'en',
			base: open.results.get('base')!
		};
		const text = paperText(paper);
		for (let cell = quantity.base; cell < quantity.base + 5; cell++)
			expect(text).toContain(viewCell(context, results, cell).text);
	});

	it('are made of every part that it names, each with something to say', () => {
		for (const one of papers) {
			const scenarios = one.sections.some(({ kind }) => kind === 'case') ? ['new_line'] : ['base'];
			const paper = paperOf(making(open, { picture: one, scenarios }));
			for (const { title } of one.sections) expect(paperText(paper)).toContain(title);
			expect(paperText(paper)).not.toMatch(/No value|…(\t|\n)|undefined|NaN/);
		}
		expect(papers.map(({ name }) => name)).toEqual(
			expect.arrayContaining(['investment', 'shifts', 'standard_cost'])
		);
	});

	it('says that its figures are invented', () => {
		expect(
			paperText(paperOf(making(open, { picture: papers[0]!, scenarios: ['new_line'] })))
		).toContain('invented');
	});
});

describe('a workbook that names no paper', () => {
	it('has one for each picture that holds what a paper needs, and none where there is none', () => {
		expect(papersOf({ pictures: [paybackPicture] }).map(({ name }) => name)).toEqual([
			'investment'
		]);
		expect(papersOf({ pictures: [] })).toEqual([]);
		expect(papersOf(openShipped('shop').workbook).map(({ name }) => name)).toEqual([
			'standard_cost',
			'investment'
		]);
	});
});
