import { describe, expect, it } from 'vitest';
import { barOf, fewestFor, rankedParts, rankingOf } from '$lib/ui/pictures/ranking/ranking';
import {
	againstBase,
	rankingLine,
	rankingSummary,
	rankingTable,
	rankingTitle
} from '$lib/ui/pictures/ranking/ranking-words';
import { Model } from '$lib/engine/model';
import { findProblems } from '$lib/workbook/consistency';
import { loadWorkbook } from '$lib/workbook/load';
import { VERSION, type Picture, type Workbook } from '$lib/workbook/schema';

type Ranked = Extract<Picture, { kind: 'ranking' }>;
const picture: Ranked = {
	...{ kind: 'ranking', title: 'Losses', amount: 'cost', by_part: 'cost_in', columns: ['hours'] }
};

function workbookOf(costs: Record<string, number>): Workbook {
	const members = Object.keys(costs).map((id) => ({ id, label: `the ${id}` }));
	const loaded = loadWorkbook(
		JSON.stringify({
			...{ format: 'metrewright', version: VERSION, title: 'Losses' },
			sets: [
				{ name: 'loss', label: 'Loss', members },
				{ name: 'month', label: 'Month', members: [{ id: 'Jan' }, { id: 'Feb' }, { id: 'Mar' }] }
			],
			sheets: [
				{
					title: 'Losses',
					quantities: [
						{ name: 'cost', label: 'Cost', unit: 'EUR', per: ['loss'], value: costs },
						{
							name: 'hours',
							label: 'Hours',
							unit: 'h',
							per: ['loss'],
							value: { stop: 12, scrap: 0 }
						},
						{
							...{ name: 'cost_in', label: 'Cost in the month', unit: 'EUR' },
							...{ per: ['loss', 'month'], value: { scrap: { Feb: 3 }, stop: { Feb: 1 } } }
						}
					]
				}
			],
			scenarios: [
				{ id: 'base', title: 'Base', parent: null, changes: [] },
				{
					...{ id: 'less', title: 'Less scrap', parent: 'base' },
					changes: [{ quantity: 'cost', value: { scrap: 10 } }]
				}
			],
			pictures: [picture]
		}),
		'losses.json'
	);
	if (!loaded.ok) throw new Error(loaded.problem.line);
	return loaded.workbook;
}

function ranked(costs: Record<string, number>, { scenario = 'base', part = '' } = {}) {
	const model = Model.open(workbookOf(costs));
	const of = (id: string) => ({
		...{ layout: model.layout, results: model.results(id), faults: [] }
	});
	const hand = scenario === 'base' ? null : { title: 'Less scrap', source: of(scenario) };
	return { ranking: rankingOf({ picture, base: of('base'), hand, part }), source: of('base') };
}

describe('a ranking', () => {
	const { ranking, source } = ranked({ stop: 30, scrap: 60, none: 0, wait: 10 });

	it('has the largest first, with its share and the share of all down to it', () => {
		expect(ranking.rows.map(({ id }) => id)).toEqual(['scrap', 'stop', 'wait']);
		expect(ranking.rows.map(({ share }) => share)).toEqual([60, 30, 10]);
		expect(ranking.rows.map(({ cumulative }) => cumulative)).toEqual([60, 90, 100]);
		expect(ranking.left.map(({ id }) => id)).toEqual(['none']);
		expect(fewestFor(ranking, 80)).toBe(2);
		expect(barOf(ranking, ranking.rows[1]!)).toEqual({ from: 0, width: 50 });
	});

	it('says which comes first and how few make most of it', () => {
		expect(rankingTitle(ranking, 'en')).toBe(
			'The scrap comes first: 60.00\u00a0EUR, 60\u00a0% of all'
		);
		expect(rankingLine(ranking, 'en')).toBe(
			'The first two of 3 make 90\u00a0%. Cost, all together: 100.00\u00a0EUR'
		);
		expect(rankingSummary(ranking, 'en')).toContain('the stop: 30.00\u00a0EUR, 30\u00a0%.');
		expect(rankingTable(ranking).rows[1]).toEqual(['the stop', 30, 30, 90, 12]);
	});

	it('is asked of the months that have any, and says so', () => {
		expect(rankedParts(picture, source).map(({ id }) => id)).toEqual(['Feb']);
		const { ranking: inFeb } = ranked({ stop: 30, scrap: 60 }, { part: 'Feb' });
		expect(inFeb.rows.map(({ id, amount }) => [id, amount.value])).toEqual([
			['scrap', 3],
			['stop', 1]
		]);
		expect(rankingTitle(inFeb, 'en')).toContain('in Feb');
		// Hours of the year say nothing of a month.
		expect(inFeb.columns).toEqual([]);
	});

	it('has no shares where something is below nothing: what is of what would be untrue', () => {
		const { ranking: mixed } = ranked({ stop: 30, scrap: -10 });
		expect(mixed.rows.map(({ share }) => share)).toEqual([null, null]);
		expect(rankingTitle(mixed, 'en')).toBe('The stop comes first: 30.00\u00a0EUR');
		expect(fewestFor(mixed, 80)).toBe(0);
		expect(barOf(mixed, mixed.rows[1]!)).toEqual({ from: 0, width: 25 });
	});

	it('ranks the scenario in hand, and tells each beside the base', () => {
		const { ranking: less } = ranked({ stop: 30, scrap: 60 }, { scenario: 'less' });
		expect(less.rows.map(({ id }) => id)).toEqual(['stop', 'scrap']);
		expect(less.rows.map((row) => againstBase(less, row, 'en'))).toEqual(['', '−50.00']);
		expect(rankingTable(less).rows[1]!.slice(0, 3)).toEqual(['the scrap', 10, -50]);
	});

	it('with nothing in it says so', () => {
		const { ranking: none } = ranked({ stop: 0, scrap: 0 });
		expect(rankingTitle(none, 'en')).toBe('Nothing to rank');
		expect(rankingLine(none, 'en')).toBe('');
	});
});

it('what a ranking names must be per one set, and per that and one more', () => {
	const workbook = workbookOf({ stop: 1, scrap: 1 });
	const told = (changed: Partial<Ranked>) =>
		findProblems({ ...workbook, pictures: [{ ...picture, ...changed }] }).map(
			({ code, message }) => [code, message]
		);
	expect(told({})).toEqual([]);
	expect(told({ amount: 'cost_in' })[0]![0]).toBe('picture-axes');
	expect(told({ by_part: 'cost' })[0]![0]).toBe('picture-axes');
	expect(told({ columns: ['cost_in'] })[0]![0]).toBe('picture-axes');
});
