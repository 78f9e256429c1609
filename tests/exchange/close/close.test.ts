/** A month of the shipped plant closed from the files of its own systems: invented ones, beside this test. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { layOut } from '$lib/engine/layout';
import { askedOf } from '$lib/exchange/log/asked';
import { reuseLog } from '$lib/exchange/log/kept-log';
import { logCommands, sourceChanges } from '$lib/exchange/log/source';
import { TableDesk } from '$lib/exchange/table/desk';
import { keptOf, reuse } from '$lib/exchange/table/kept';
import { acceptedCommands } from '$lib/exchange/table/look';
import { askedOfAll, withOfAll, type Mapping } from '$lib/exchange/table/mapping';
import { memberNamed } from '$lib/exchange/table/member-named';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { keptFor, kindsOf, monthsIn } from '$lib/ui/close/close';
import { apply, enter, openShipped, read } from '../../reference/shipped';

const FOLDER = 'tests/exchange/close';
const MONTHS = [
	['may-2027', '2027-05'],
	['june-2027', '2027-06']
] as const;
const filesOf = (folder: string) =>
	readdirSync(`${FOLDER}/${folder}`).filter((name) => name.endsWith('.csv'));

async function deskOf(path: string) {
	const desk = new TableDesk();
	const held = await desk.read(new Uint8Array(readFileSync(`${FOLDER}/${path}`)), path);
	if (!held.ok) throw new Error(held.message);
	return { desk, held: held.sheets[0]! };
}

/** Brings a file in as the page does: matched as it was kept, and told the month where it names none. */
async function bring(model: Model, path: string, month: string): Promise<number> {
	const { desk, held } = await deskOf(path);
	const { workbook } = model;
	const kept = keptFor(held.head, workbook);
	if (!kept) throw new Error(`nothing kept has the headings of ${path}`);
	if (kept.log) {
		const proposed = desk.proposeLog(0, workbook, []);
		const own = held.signs.map((sign) => sign.own);
		const { log } = reuseLog(kept, held.head, proposed.log, own, workbook);
		expect(askedOf(log, { head: held.head, ...proposed }, workbook)).toBeNull();
		const look = desk.lookLog(0, log, workbook);
		expect([look.left, look.refused, look.doubted.size]).toEqual([[], [], 0]);
		const sources = sourceChanges(
			{ file: path, digest: look.digest },
			look,
			look.changes,
			() => 1,
			workbook
		);
		expect(monthsIn(look.changes, 'period')).toEqual([month]);
		apply(model, { kind: 'several', commands: logCommands(look.changes, sources, look, workbook) });
		return look.changes.length;
	}
	const reused = reuse(kept, held.head, held.signs, desk.propose(0, workbook), workbook);
	expect([reused.lost, reused.fresh, reused.gone]).toEqual([[], [], []]);
	expect(askedOfAll(reused.mapping)).toEqual(['period']);
	const looked = desk.look(0, withOfAll(reused.mapping, 'period', month), NO_CHOICES, workbook);
	if (!looked.ok) throw new Error(looked.message);
	const { look } = looked;
	expect([look.problems, look.unknown, [...look.doubted.values()]]).toEqual([[], [], []]);
	expect(monthsIn(look.changes, 'period')).toEqual([month]);
	apply(model, { kind: 'several', commands: acceptedCommands(look, new Set()) });
	return look.changes.length;
}

describe('May and June 2027, from their files', () => {
	it('are closed one after the other, and each and the year to date are explained', async () => {
		const model = openShipped('marram');
		for (const [folder, month] of MONTHS) {
			let values = 0;
			for (const name of filesOf(folder)) values += await bring(model, `${folder}/${name}`, month);
			expect(values).toBeGreaterThan(80);
			enter(model, ['closed', [month], true]);
			expect(read(model, 'month_is_partial', month)).toBe(0);
			expect(Math.abs(read(model, 'variances_close', month))).toBeLessThan(1e-6);
			expect(Math.abs(read(model, 'to_date_closes', month))).toBeLessThan(1e-6);
			expect(Math.abs(read(model, 'variance_in_all', month))).toBeLessThan(
				0.5 * read(model, 'budget_result', month)
			);
		}
		// two postings of a product on a line are one figure of the month
		expect(read(model, 'actual_metres', 'PX10B', 'L1', '2027-06')).toBe(200440 + 164010);
		// 3,304 EUR/kg with a decimal comma
		expect(read(model, 'actual_material_price', 'PB1', '2027-06')).toBe(3.304);
		expect(model.checks('base').fail).toEqual([]);
	});
});

describe('what a month is closed with', () => {
	const model = openShipped('marram');
	const picture = model.workbook.pictures!.find((one) => one.kind === 'waterfall')!;
	const source = { layout: model.layout, results: model.results('base'), faults: undefined };
	const of = (month: string, name: string) =>
		kindsOf(picture, source, month).find(({ quantity }) => quantity.name === name)!;

	it('is told kind by kind: how much is entered, what lacks, and by which table it comes', () => {
		expect(of('2027-05', 'actual_net_price')).toMatchObject({ cells: 10, entered: 0, missing: [] });
		expect(of('2027-04', 'actual_net_price')).toMatchObject({ cells: 10, entered: 10 });
		expect(of('2027-05', 'actual_net_price').broughtBy).toEqual(['Invoices']);
		expect(of('2027-05', 'actual_metres').broughtBy).toEqual(['Production bookings']);
		expect(of('2027-05', 'stock_counted').broughtBy).toEqual([]);
		enter(model, ['actual_paid_hours', ['shift leader', '2027-05'], 540]);
		const now = { ...source, results: model.results('base') };
		const hours = kindsOf(picture, now, '2027-05').find(
			({ quantity }) => quantity.name === 'actual_paid_hours'
		)!;
		expect(hours.entered).toBe(1);
		expect(hours.missing).toHaveLength(5);
		expect(hours.missing).not.toContain('shift leader');
	});
});

describe('a file that does not say its month', () => {
	const workbook = openShipped('marram').workbook;

	it('is matched once the month is said, and the month is asked of the next file again', async () => {
		const { desk, held } = await deskOf('may-2027/dosing.csv');
		const open = desk.propose(0, workbook);
		// "Dosed [kg]" is understood as the mass dosed only with a month
		expect(open.all).toEqual([{ of: 'period', id: null }]);
		const said = withOfAll(open, 'period', '2027-05');
		const mapping: Mapping = {
			...said,
			columns: said.columns.map((column) =>
				column.meaning.is === 'asked'
					? {
							...column,
							meaning: {
								is: 'value',
								scenario: 'base',
								quantity: 'actual_mass_per_metre',
								member: null
							}
						}
					: column
			)
		};
		const kept = keptOf('Weighed', held.head, mapping)!;
		expect(kept.all).toEqual(['period']);
		const next = reuse(kept, held.head, held.signs, open, workbook);
		expect(next.mapping.all).toEqual([{ of: 'period', id: null }]);
	});

	it('may be of one member of any set, and of none again', async () => {
		const { desk } = await deskOf('may-2027/sales.csv');
		const mapping = withOfAll(desk.propose(0, workbook), 'line', 'L3');
		expect(mapping.all).toContainEqual({ of: 'line', id: 'L3' });
		expect(withOfAll(mapping, 'line', undefined).all ?? []).not.toContainEqual({
			of: 'line',
			id: 'L3'
		});
	});
});

describe('a column of dates', () => {
	const { workbook } = openShipped('marram');
	const months = workbook.sets.find(({ name }) => name === 'period')!;

	// ISO 8601-1:2019, 5.2.2.1: a calendar date is written year, month, day; a month as year and month.
	it.each([
		['2027-05', '2027-05'],
		['2027-05-31', '2027-05'],
		['31.05.2027', '2027-05'],
		['05/2027', '2027-05'],
		['May 2027', '2027-05'],
		['2027-13', null],
		['2031-05-01', null],
		['05/06/2027', null],
		['1.955', null]
	])('%s is of the month %s', (text, id) => {
		expect(memberNamed(months, text)).toBe(id);
	});

	it('groups rows into months, and names no month of the year', () => {
		expect(layOut(workbook).sets.get('month')).toBeDefined();
		const rows = ['2027-05-03', '2027-06-30'].map((date) => `${date};PX10B;1200`);
		const desk = new TableDesk();
		const text = ['Month;Product;Metres invoiced', ...rows].join('\n');
		return desk.read(new TextEncoder().encode(text), 'sales.csv').then(() => {
			const mapping = desk.propose(0, workbook);
			expect(mapping.columns.map(({ meaning }) => meaning)).toMatchObject([
				{ is: 'member', of: 'period' },
				{ is: 'member', of: 'product' },
				{ is: 'value', quantity: 'invoiced_metres' }
			]);
			const looked = desk.look(0, mapping, NO_CHOICES, workbook);
			expect(looked.ok && monthsIn(looked.look.changes, 'period')).toEqual(['2027-05', '2027-06']);
		});
	});
});
