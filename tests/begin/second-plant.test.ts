/** The first hour of an invented second plant, without a page: its lists come in, its figures are typed, and the first cost card is right. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { layOut } from '$lib/engine/layout';
import { TableDesk } from '$lib/exchange/table/desk';
import { acceptedCommands, changeKey } from '$lib/exchange/table/look';
import { unknownKey } from '$lib/exchange/table/new-members';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import { ownQuantities } from '$lib/review/template';
import { broughtIn, mineCommand, ownEntryCommands, type OwnEntry } from '$lib/ui/begin/own-entry';
import { cardOf, comparedOf, withoutMetres } from '$lib/ui/begin/result';
import { inAll, stepStates, type StepState } from '$lib/ui/begin/steps';
import { beginFrom } from '$lib/workbook/begin/from';
import { oneMore } from '$lib/workbook/begin/arrange';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { openShipped, read } from '../reference/shipped';
import { FILES, KNOWN, yearOfLog } from './second-plant';

const plant = openShipped('marram').workbook;
let workbook: Workbook;
let entries = 0;
const apply = (...commands: readonly Command[]) => {
	const applied = applyCommand(workbook, { kind: 'several', commands });
	if (!applied.ok) throw new Error(applied.problem.message);
	workbook = applied.workbook;
};
const states = (of = workbook): StepState[] => stepStates(layOut(of), ownQuantities(of, plant));
const ids = (set: string) => findSet(workbook, set)!.members.map(({ id }) => id);

/** As the page does it: columns as proposed, every unknown name added. */
async function bring(file: string) {
	const desk = new TableDesk();
	const held = await desk.read(readFileSync(file), file);
	if (!held.ok) throw new Error(held.message);
	const mapping = desk.propose(0, workbook);
	const first = desk.look(0, mapping, { unknown: new Map(), removed: new Set() }, workbook);
	if (!first.ok) throw new Error(first.message);
	const unknown = new Map(
		first.look.unknown.map(({ set, text }) => [
			unknownKey(set, text),
			{ as: 'new', like: null } as const
		])
	);
	const looked = desk.look(0, mapping, { unknown, removed: new Set() }, workbook);
	if (!looked.ok) throw new Error(looked.message);
	expect(looked.look.problems).toEqual([]);
	expect(looked.look.leftOut).toEqual([]);
	// Far from what stood there as a typical value: looked over, and accepted.
	const accepted = new Set([...looked.look.doubted.keys()].map(changeKey));
	apply(...broughtIn(workbook, plant, acceptedCommands(looked.look, accepted)));
}

function type(...own: OwnEntry[]) {
	entries += own.length;
	apply(...ownEntryCommands(workbook, plant, own));
}

beforeAll(async () => {
	const begun = beginFrom(plant, 'Second works');
	if (!begun.ok) throw new Error(begun.message);
	workbook = begun.workbook;
	for (const file of Object.values(FILES)) await bring(file);
	for (const { lists } of states())
		for (const { quantity, asked } of lists)
			KNOWN[quantity.quantity.label]?.forEach((value, i) =>
				type({ quantity: quantity.quantity.name, at: asked[i]!.at, value })
			);
	const { metres, dosed, electricity, hours } = yearOfLog();
	type({ quantity: 'ledger_metres', at: [], value: metres / 1e6 });
	type({ quantity: 'ledger_dosed', at: [], value: dosed / 1000 });
	type({ quantity: 'ledger_electricity', at: [], value: electricity / 1000 });
	type({ quantity: 'ledger_line_hours', at: [], value: hours });
});

describe('lists in three national formats', () => {
	it('bring the plant’s own items and lines, and what stood for all goes', () => {
		expect(ids('product')).toEqual(['G10', 'G14', 'G16', 'G18', 'G20', 'G25', 'G28']);
		// The item that stood for all was of the pipe that did: its demand is no other pipe's.
		expect(ids('item')).toEqual([]);
		expect(ids('line')).toEqual(['L8', 'E1', 'E2']);
		expect(findQuantity(workbook, 'price')?.value).toMatchObject({ G28: 1.12, G10: 0.235 });
		expect(findQuantity(workbook, 'pipe_demand')?.value).toMatchObject({ G16: 3_250_000 });
		expect(findQuantity(workbook, 'cooling_length')?.value).toMatchObject({ E1: 12.5 });
		expect(findQuantity(workbook, 'ledger_amount')?.value).toMatchObject({ of_sales: 3_684_000 });
	});
	it('give each item the typical values of the shipped one that is nearest', () => {
		const like = findSet(workbook, 'product')!.members.map((member) => [member.id, member.like]);
		expect(Object.fromEntries(like)).toMatchObject({
			G10: 'PX10B',
			G16: 'PX15B',
			G20: 'PX22B',
			G28: 'PX28B'
		});
	});
});

describe('the first hour', () => {
	it('asks for no more than 130 entries, and all of them are the plant’s own at the end', () => {
		const { entered, same } = inAll(states());
		expect(entered).toBeLessThanOrEqual(130);
		expect(states().flatMap(({ missing }) => missing)).toEqual([]);
		expect(same).toBe(0);
		expect(entries).toBeLessThanOrEqual(60);
	});
	it('says at the beginning that none is', () => {
		const begun = beginFrom(plant, 'x');
		const before = states(begun.ok ? begun.workbook : workbook);
		expect(inAll(before).same).toBe(inAll(before).entered);
		expect(cardOf(layOut(begun.ok ? begun.workbook : workbook), before, null)?.waitsFor).toContain(
			'Minimum wall'
		);
	});
	it('is told step by step: an item more is missing in its own step alone', () => {
		const more = applyCommand(workbook, {
			kind: 'several',
			commands: oneMore(workbook, plant, 'product', 'G40')
		});
		if (!more.ok) throw new Error(more.problem.message);
		const [items, ...others] = states(more.workbook);
		expect(items!.missing).toContain('Demand of a pipe without items');
		expect(others.flatMap(({ missing }) => missing)).toEqual([]);
		const model = Model.open(more.workbook);
		expect(withoutMetres(model.results('base'), states(more.workbook))).toEqual(['G40']);
		expect(cardOf(model.layout, states(more.workbook), 'G40')?.waitsFor.length).toBeGreaterThan(0);
		expect(cardOf(model.layout, states(more.workbook), 'G16')?.waitsFor).toEqual([]);
	});
});

describe('figures that are right as they stand', () => {
	it('are taken as one’s own in one step, however many', () => {
		const begun = beginFrom(plant, 'x');
		if (!begun.ok) throw new Error(begun.message);
		const at = [
			{ quantity: 'wage', at: ['shift leader'] },
			{ quantity: 'on_costs', at: [] }
		];
		const commands = mineCommand(begun.workbook, plant, at);
		expect(commands).toHaveLength(1);
		const taken = applyCommand(begun.workbook, commands[0]!);
		if (!taken.ok) throw new Error(taken.problem.message);
		const before = inAll(states(begun.workbook));
		expect(inAll(states(taken.workbook)).same).toBe(before.same - 2);
	});
});

describe('what it comes to', () => {
	let model: Model;
	beforeAll(async () => {
		model = Model.open(workbook);
		const solver = await Solver.load();
		for (const one of planAll(solver, model)) expect(one.problems).toEqual([]);
		solver.dispose();
	});
	it('is the material of a metre, worked out by hand from the list and the typical values', () => {
		const wall = 1.6 + 0.055 + 3 * Math.hypot(0.03, 0.01); // least wall, eccentricity, spread: mm
		const [tie, barrier, cover] = [0.035 + 3 * 0.005, 0.045 + 3 * 0.005, 0.28]; // mm
		const inner = wall - 2 * tie - barrier - cover;
		// From outside in; each layer a ring of its own.
		let diameter = 16 - 0.06 + 3 * 0.02;
		const kilograms = [
			[cover, 945],
			[tie, 918],
			[barrier, 1180],
			[tie, 918],
			[inner, 945]
		].map(([thick = 0, density = 0]) => {
			const ring = (Math.PI * (diameter - thick) * thick * density) / 1e6; // mm² × kg/m³ to kg/m
			diameter -= 2 * thick;
			return ring;
		});
		const compound = 0.95 * 2.11 + 0.04 * 3.55 + 0.01 * 2.8; // base, catalyst, colour: EUR/kg
		const at = (item: string) => read(model, 'cost_part', 'G16', item);
		expect(at('resin')).toBeCloseTo((kilograms[0]! + kilograms[4]!) * compound, 12);
		expect(at('adhesive')).toBeCloseTo((kilograms[1]! + kilograms[3]!) * 3.7, 12);
		expect(at('barrier')).toBeCloseTo(kilograms[2]! * 7.35, 12);
		expect(at('packaging')).toBeCloseTo(0.42 / 50 + 14 / (36 * 50), 12);
	});
	it('is a card whose parts are its cost, and whose coil is fifty metres of it', () => {
		const card = cardOf(model.layout, states(), 'G16')!;
		const { values } = model.results('base');
		const parts = card.parts.reduce((sum, { cell }) => sum + values[cell]!, 0);
		expect(parts).toBeCloseTo(values[card.total!.cell]!, 10);
		expect(values[card.perUnit!.cell]).toBeCloseTo(50 * parts, 8);
	});
	it('is EBIT beside the ledger’s eight totals', () => {
		const ledger =
			3_684_000 - (1_568_000 + 141_500 + 176_400 + 838_000 + 118_000 + 49_800 + 472_000);
		expect(read(model, 'ledger_ebit')).toBeCloseTo(ledger, 6);
		expect(read(model, 'ebit_against_ledger')).toBeCloseTo(read(model, 'ebit') - ledger, 4);
		const [books, alone] = comparedOf(model.layout, states());
		expect(books?.columns.map(({ quantity }) => quantity.name)).toEqual([
			...['ledger_amount', 'ledger_model', 'ledger_difference']
		]);
		expect(books?.rows.map(({ label }) => label)).toContain('Net sales');
		expect(alone?.rows.map(({ label }) => label)).toContain('EBIT by the ledger');
	});
	it('sells what the list asks for', () => {
		expect(read(model, 'total_good_metres')).toBeCloseTo(9.86, 6);
		expect(read(model, 'metres_off')).toBeCloseTo((100 * 9_860_000) / yearOfLog().metres - 100, 6);
	});
});
