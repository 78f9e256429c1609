/** What stands beside the payback picture: the order of cases, options together, the parts of a value. */
import { describe, expect, it } from 'vitest';
import { interactionsOf } from '$lib/ui/pictures/payback/interaction';
import { annualUnit, interactionTitle } from '$lib/ui/pictures/payback/interaction-words';
import { sourceOf, type Open } from '$lib/ui/figure/open';
import { casesOf, type PaybackPicture } from '$lib/ui/pictures/payback/payback';
import { partColumns, partText } from '$lib/ui/pictures/payback/payback-parts';
import { ranked, rankFor } from '$lib/ui/pictures/payback/payback-rank';
import { paybackTable } from '$lib/ui/pictures/payback/payback-table';
import { UnitSystem } from '$lib/units/system';
import { apply, openShipped, read } from '../../reference/shipped';

const EUR = { factor: 1, unit: 'EUR' };
const kEUR = { factor: 0.001, unit: 'kEUR' };

function page(change: (model: ReturnType<typeof openShipped>) => void = () => undefined) {
	const model = openShipped('marram');
	change(model);
	const ids = model.workbook.scenarios.map(({ id }) => id);
	const open: Open = {
		...{ layout: model.layout, locale: 'en', base: 'base', selectedScenario: 'new_line' },
		results: new Map(ids.map((id) => [id, model.results(id)])),
		faults: new Map(),
		units: UnitSystem.create([]).system
	};
	const picture = model.workbook.pictures!.find(
		(picture): picture is PaybackPicture => picture.kind === 'payback'
	)!;
	const { cases } = casesOf({ picture, ...open });
	const interactions = interactionsOf({
		...{ cases, options: picture.options!, layout: model.layout },
		sourceOf: (id) => sourceOf(open, id)
	});
	return { model, open, picture, cases, interactions };
}

describe('cases', () => {
	it('stand by what they are worth, in all or a year, the best first', () => {
		const { cases } = page();
		for (const by of ['npv', 'annualValue'] as const) {
			const values = ranked(cases, by).map((one) => one[by].value);
			expect(values).toEqual([...values].sort((a, b) => b - a));
		}
	});

	it('stand by what they are worth a year where their lives differ, else in all', () => {
		const { cases } = page();
		expect(new Set(cases.map(({ life }) => life.value)).size).toBeGreaterThan(1);
		expect(rankFor(cases)).toBe('annualValue');
		expect(rankFor(cases.slice(0, 1))).toBe('npv');
	});

	it('stand by payback, the soonest first and those that never pay last', () => {
		const order = ranked(page().cases, 'payback');
		const found = order.flatMap(({ payback }) => (payback.kind === 'value' ? [payback.value] : []));
		expect(found).toEqual([...found].sort((a, b) => a - b));
		expect(order.at(-1)!.id).toBe('new_rewinder');
	});
});

describe('options together', () => {
	it('are held against a case for each of them', () => {
		const { model, picture, interactions } = page();
		const both = interactions.find(({ together }) => together.id === 'new_line_and_rewinder')!;
		expect(both.alone.map(({ id }) => id)).toEqual(['new_line', 'new_rewinder']);
		const annual = (scenario: string) => read(model, picture.annual_value, { scenario });
		const apart = annual('new_line') + annual('new_rewinder');
		expect(both.sum).toBeCloseTo(apart, 6);
		expect(both.beyond).toBeCloseTo(annual('new_line_and_rewinder') - apart, 6);
		const worth = Math.round(both.beyond / 1000).toLocaleString('en');
		const scale = { factor: 0.001, unit: annualUnit('EUR/year', 'EUR', kEUR) };
		expect(interactionTitle([both], scale, 'en')).toBe(
			`New line and rewinder would be worth ${worth}\u00a0kEUR/year more than each alone adds up to`
		);
	});

	it('can be worth less than each alone', () => {
		const { interactions } = page();
		const crews = interactions.find(({ together }) => together.id === 'weekend_crews_and_gauging')!;
		expect(crews.beyond).toBeLessThan(0);
		expect(interactionTitle([crews], kEUR, 'en')).toContain('less than each alone');
	});

	it('are not held against cases that are measured against something else', () => {
		const { interactions } = page((model) =>
			apply(model, {
				kind: 'replace_scenario',
				id: 'new_line_and_rewinder',
				scenario: {
					...{ id: 'new_line_and_rewinder', title: 'New line and rewinder' },
					...{ parent: 'new_line', against: 'better_gauging' }
				}
			})
		);
		expect(interactions.map(({ together }) => together.id)).not.toContain('new_line_and_rewinder');
	});
});

describe('the parts of a value', () => {
	it('are columns that add up to it, with the further figures behind them', () => {
		const { open, picture, cases } = page();
		const columns = partColumns(open.layout, picture, EUR);
		const money = columns.filter(({ isMoney }) => isMoney);
		for (const case_ of cases) {
			const source = sourceOf(open, case_.id);
			const sum = money.reduce((so, column) => so + column.of(source).value, 0);
			expect(sum, case_.id).toBeCloseTo(case_.npv.value, 4);
		}
		expect(columns.map(({ label }) => label).slice(money.length)).toEqual([
			'Profitability index',
			'Modified rate of return',
			'Cost overrun the case can take'
		]);
		const source = sourceOf(open, 'new_line');
		expect(partText(partColumns(open.layout, picture, kEUR)[0]!, source, kEUR, 'en')).toBe(
			'−1,618'
		);
	});

	it('are taken along in the table, with what is beyond each option alone', () => {
		const { open, picture, cases, interactions } = page();
		const table = paybackTable(
			{ cases, colours: {}, without: [], lacking: null, pending: 0 },
			open.layout,
			picture,
			{
				interactions,
				sourceOf: (id) => sourceOf(open, id)
			}
		);
		const at = (label: string) => table.columns.indexOf(label);
		const line = table.rows.find(([title]) => title === 'New line')!;
		expect(line[at('Present value, investment, EUR')]).toBe(-1_618_000);
		const beyond = at('Beyond each option alone, EUR/year');
		expect(line[beyond]).toBeNull();
		const both = table.rows.find(([title]) => title === 'New line and rewinder')!;
		const together = interactions.find(
			({ together }) => together.title === 'New line and rewinder'
		)!;
		expect(both[beyond]).toBe(together.beyond);
		expect(together.beyond).toBeGreaterThan(100_000);
		expect(table.rows.every((row) => row.length === table.columns.length)).toBe(true);
	});
});
