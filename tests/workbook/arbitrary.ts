/** Random sound workbooks, and random commands of every kind for them. */
import fc from 'fast-check';
import { applyCommand, type Command } from '$lib/workbook/commands';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { patchBetween } from '$lib/workbook/patch';
import { axesOf, pairKey } from '$lib/workbook/axes';
import { canonicalStudy } from '$lib/workbook/canonical';
import { cellGuide, hasInputs, placeProblem } from '$lib/workbook/cells';
import { columnsOf, findSet, quantityPlaces } from '$lib/workbook/lookup';
import {
	VERSION,
	type Change,
	type Frozen,
	type KeptQuote,
	type KeptTable,
	type Quantity,
	type Scalar,
	type Scenario,
	type SetDefinition,
	type Values,
	type Workbook
} from '$lib/workbook/schema';
import type { Programme } from '$lib/workbook/programme-schema';
import { withValues, type ValueEntry } from '$lib/workbook/values';
import { randomStudy, STUDY_NAMES } from './random-study';

/** Turns a list of random numbers into choices; shrinks with the list. */
export class Dice {
	#at = 0;
	constructor(readonly numbers: readonly number[]) {}

	/** A whole number below `sides`. */
	roll(sides: number): number {
		const number = this.numbers[this.#at++ % Math.max(1, this.numbers.length)] ?? 0;
		return sides <= 0 ? 0 : (number + this.#at * 7) % sides;
	}
	pick<T>(list: readonly T[]): T {
		return list[this.roll(list.length)] as T;
	}
	chance(percent: number): boolean {
		return this.roll(100) < percent;
	}
	some<T>(list: readonly T[], percent = 60): T[] {
		return list.filter(() => this.chance(percent));
	}
}

export const dice = fc
	.array(fc.nat(1_000_003), { minLength: 20, maxLength: 300 })
	.map((numbers) => new Dice(numbers));

const MEMBER_IDS = ['__proto__', 'constructor', '5x24', 'PX15B', 'toString', 'L 1', '7', 'ä'];
const NUMBERS = [0, 1, -1, 1.5, 1e-9, 123456789, 0.1, 1e300];
const UNITS = ['EUR/kg', 'm', '1', 'h/week', 'kWh/kg'];
const SETS = ['product', 'line', 'layer'];

export function randomWorkbook(dice: Dice): Workbook {
	const sets: SetDefinition[] = SETS.slice(0, 1 + dice.roll(3)).map((name) => ({
		name,
		label: name.toUpperCase(),
		members: dice.some(MEMBER_IDS, 40).map((id) => ({ id }))
	}));
	const relations = dice.chance(60)
		? [
				{
					name: 'runs',
					sets: [sets[0]?.name ?? '', sets.at(-1)?.name ?? ''],
					pairs: (sets[0]?.members ?? []).flatMap((a) =>
						dice.some(sets.at(-1)?.members ?? [], 50).map((b) => [a.id, b.id])
					)
				}
			]
		: [];
	let workbook: Workbook = {
		format: 'metrewright',
		version: VERSION,
		title: 'Random',
		sets,
		relations,
		sheets: [
			{ title: 'One', quantities: [] },
			{ title: 'Two', quantities: [] }
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
	};
	const quantities = Array.from({ length: 1 + dice.roll(6) }, (_, i) =>
		randomQuantity(workbook, dice, i === 0 ? 'constructor_of' : `q${i}`)
	);
	const cut = dice.roll(quantities.length + 1);
	workbook = {
		...workbook,
		sheets: [
			{ title: 'One', quantities: quantities.slice(0, cut) },
			{ title: 'Two', quantities: quantities.slice(cut) }
		]
	};
	for (const id of ['hasOwnProperty', 's2', 's3'].slice(0, dice.roll(4))) {
		const scenario = randomScenario(workbook, dice, id);
		workbook = { ...workbook, scenarios: [...workbook.scenarios, scenario] };
	}
	const programme = dice.chance(50) ? randomProgramme(workbook, dice) : null;
	if (programme) workbook = { ...workbook, programmes: [programme] };
	if (dice.chance(40)) workbook = { ...workbook, tables: [randomTable(workbook, dice, 'Items')] };
	if (dice.chance(40))
		workbook = { ...workbook, calibrations: [randomCalibration(workbook, dice, 'load')] };
	const copy = dice.chance(40) ? randomFrozen(workbook, dice, 'budget') : null;
	if (copy) workbook = { ...workbook, frozen: [copy] };
	if (dice.chance(40)) workbook = { ...workbook, quotes: [randomQuote(workbook, dice, 'quote_a')] };
	if (dice.chance(30)) workbook = { ...workbook, letterhead: { name: 'Marram Coil Works' } };
	const studies = STUDY_NAMES.slice(0, dice.roll(4)).map((name) =>
		canonicalStudy(randomStudy(workbook, dice, name))
	);
	// A set that nothing needs, so that one can go.
	if (dice.chance(60))
		workbook = {
			...workbook,
			sets: [...workbook.sets, { name: 'spare', label: 'SPARE', members: [{ id: 'spare 1' }] }]
		};
	return studies.length > 0 ? { ...workbook, studies } : workbook;
}

function randomCalibration(workbook: Workbook, dice: Dice, name: string): Calibration {
	const quantity = dice.pick([...quantityPlaces(workbook).keys(), 'gone']);
	const set = dice.pick(workbook.sets);
	const id = dice.pick(set.members)?.id;
	const at = id === undefined ? {} : { at: id };
	return {
		name,
		title: dice.pick(['Base load', 'Another title']),
		form: 'line',
		...(dice.chance(50) && { each: set.name }),
		x: { label: 'Mass', unit: 'kg' },
		y: { label: 'Energy', unit: 'kWh' },
		...(dice.chance(50) && { today: quantity }),
		gives: [{ parameter: 'intercept', quantity, per: '730 h' }],
		...(dice.chance(50) && {
			data: [{ source: 'meter', points: [{ ...at, x: dice.roll(9), y: dice.roll(99) }] }]
		})
	};
}

function randomTable(workbook: Workbook, dice: Dice, title: string): KeptTable {
	const quantity = dice.pick([...quantityPlaces(workbook).keys(), 'gone']);
	const set = dice.pick(workbook.sets);
	const id = dice.pick(set.members)?.id;
	return {
		title,
		...(dice.chance(30) && { quantity }),
		...(dice.chance(30) && {
			log: {
				scenario: dice.pick(workbook.scenarios).id,
				...(id !== undefined && { always: [{ of: set.name, id }] }),
				sums: [{ quantity, take: 'sum' as const, column: 2 }]
			}
		}),
		...(dice.chance(20) && { pairs: { relation: 'runs', first: 0, mark: 1 } }),
		columns: [
			{ heading: 'What', is: 'member', of: set.name },
			{ heading: '', is: 'nothing' },
			{
				heading: 'Price',
				is: 'value',
				scenario: dice.pick(workbook.scenarios).id,
				quantity,
				...(id !== undefined && dice.chance(50) && { member: { of: set.name, id } }),
				...(dice.chance(50) && { unit: 'EUR/100 m', decimal: ',' as const })
			}
		]
	};
}

/** Null where nothing in the workbook can be decided, or nothing be largest. */
function randomProgramme(workbook: Workbook, dice: Dice): Programme | null {
	const quantities = [...quantityPlaces(workbook).values()].map(({ quantity }) => quantity);
	const decisions = quantities.filter(
		({ formula, type, fixed }) => formula === undefined && typeof type !== 'object' && !fixed
	);
	const objectives = quantities.filter(({ per }) => !per?.length);
	if (decisions.length === 0 || objectives.length === 0) return null;
	return {
		name: 'allocation',
		title: dice.pick(['Who makes what', 'Another title']),
		maximise: dice.pick(objectives).name,
		decisions: [dice.pick(decisions).name],
		constraints: []
	};
}

export function randomQuantity(workbook: Workbook, dice: Dice, name: string): Quantity {
	const { sets } = workbook;
	const twice = dice.chance(15) && sets[0];
	const per = twice
		? [`from: ${twice.name}`, `to: ${twice.name}`]
		: dice.some(sets, 40).map((set) => set.name);
	const shape = dice.roll(4);
	const type =
		shape === 0 ? 'yes_no' : shape === 1 ? { member_of: dice.pick(sets).name } : 'number';
	let quantity: Quantity = { name, label: `Label of ${name}`, type };
	if (per.length > 0) quantity = { ...quantity, per };
	if (type === 'number' && dice.chance(70)) quantity = { ...quantity, unit: dice.pick(UNITS) };
	const relation = workbook.relations?.[0];
	if (
		relation &&
		relation.sets.every((set) => per.includes(set)) &&
		new Set(relation.sets).size === relation.sets.length &&
		dice.chance(60)
	)
		quantity = { ...quantity, in: [relation.name] };
	if (dice.chance(20)) {
		const by = axesOf(quantity)[0];
		if (by && dice.chance(50))
			quantity = { ...quantity, formula: { by: by.name, cases: { '*': 'input' } } };
		else return { ...quantity, formula: `${name} + 1`, note: 'not a formula that computes' };
	} else if (dice.chance(15)) quantity = { ...quantity, fixed: true };
	if (dice.chance(20))
		quantity = { ...quantity, other_names: dice.pick([['tariff'], ['price', 'constructor']]) };
	if (dice.chance(20)) quantity = { ...quantity, note: 'a "note"\nof two lines' };
	const value = randomValues(workbook, quantity, dice);
	return value === undefined ? quantity : { ...quantity, value };
}

export function randomScalar(workbook: Workbook, quantity: Quantity, dice: Dice): Scalar {
	if (dice.chance(15)) return null;
	if (quantity.type === 'yes_no') return dice.chance(50);
	if (typeof quantity.type !== 'object') return dice.pick(NUMBERS);
	const members = findSet(workbook, quantity.type.member_of)?.members ?? [];
	return members.length > 0 ? dice.pick(members).id : null;
}

/** The members of every cell that takes a value. */
export function placesOf(workbook: Workbook, quantity: Quantity): string[][] {
	const guide = cellGuide(workbook, quantity);
	if (!guide) return [];
	const all = guide.members.reduce<string[][]>(
		(places, members) => places.flatMap((at) => [...members.keys()].map((id) => [...at, id])),
		[[]]
	);
	return all.filter((at) => placeProblem(guide, at) === null);
}

function randomValues(workbook: Workbook, quantity: Quantity, dice: Dice): Values | undefined {
	const entries: ValueEntry[] = dice
		.some(placesOf(workbook, quantity), 60)
		.map((at) => ({ at, value: randomScalar(workbook, quantity, dice) }));
	return withValues(undefined, entries);
}

export const changeable = (workbook: Workbook): Quantity[] =>
	[...quantityPlaces(workbook).values()]
		.map(({ quantity }) => quantity)
		.filter((quantity) => hasInputs(quantity) && !quantity.fixed);

export function randomScenario(workbook: Workbook, dice: Dice, id: string): Scenario {
	const changes: Change[] = dice.some(changeable(workbook), 50).flatMap((quantity) => {
		const value = randomValues(workbook, quantity, dice);
		if (value === undefined) return [];
		const change = { quantity: quantity.name, value };
		return [dice.chance(30) ? { ...change, note: `why ${quantity.name}` } : change];
	});
	const parent = dice.pick(workbook.scenarios).id;
	const scenario: Scenario = { id, title: `Scenario ${id}`, parent, changes };
	return dice.chance(30) ? { ...scenario, against: dice.pick(columnsOf(workbook)).id } : scenario;
}

/** Null where nothing has a value. */
function randomFrozen(workbook: Workbook, dice: Dice, id: string): Frozen | null {
	const quantities = [...quantityPlaces(workbook).values()].flatMap(({ quantity }) => {
		const { name, label, per, value } = quantity;
		return value === undefined || dice.chance(30)
			? []
			: [{ name, label, ...(per && per.length > 0 && { per }), value }];
	});
	const head = { id, title: 'Budget', of: workbook.scenarios[0]!.title, date: '2027-11-30' };
	return quantities.length === 0 ? null : { ...head, quantities };
}

/** Its grounds are those of a frozen copy: the same for every quote of a workbook, as of one day. */
function randomQuote(workbook: Workbook, dice: Dice, id: string): KeptQuote {
	const copy = workbook.frozen?.[0];
	const quantity = dice.pick([...quantityPlaces(workbook).values()])?.quantity;
	const at = quantity && placesOf(workbook, quantity)[0];
	const value = quantity?.type === undefined ? dice.roll(9) : null;
	return {
		...{ id, number: '27-AB-001', version: 1 + dice.roll(2), date: '2027-11-30' },
		state: dice.pick(['asked', 'sent', 'won']),
		...(dice.chance(50) && { note: dice.pick(['by mail', 'asks twice']) }),
		items: [
			{
				id: 'one',
				entries: quantity
					? [{ quantity: quantity.name, ...(at && at.length > 0 && { at: [...at] }), value }]
					: [],
				...(copy && {
					grounds: {
						...{ date: '2027-11-30', of: 'Base', figures: copy.quantities },
						inputs: Object.fromEntries(
							copy.quantities.map(({ name, value = null }) => [name, value])
						)
					}
				})
			}
		]
	};
}

type Maker = (workbook: Workbook, dice: Dice) => Command | null;

const anyQuantity = (workbook: Workbook, dice: Dice): Quantity | undefined =>
	dice.pick([...quantityPlaces(workbook).values()])?.quantity;

/** One maker for each kind of command: the record is complete or does not compile. */
export const MAKERS: Readonly<Record<Command['kind'], Maker>> = {
	set_inputs: (workbook, dice) => {
		const scenario = dice.pick(workbook.scenarios);
		const isBase = scenario === workbook.scenarios[0];
		const quantities = [...quantityPlaces(workbook).values()]
			.map(({ quantity }) => quantity)
			.filter((quantity) => hasInputs(quantity) && (isBase || !quantity.fixed));
		const entries = dice.some(quantities, 60).flatMap((quantity) =>
			dice.some(placesOf(workbook, quantity), 50).map((at) => ({
				quantity: quantity.name,
				at,
				...(dice.chance(50) ? {} : { value: randomScalar(workbook, quantity, dice) })
			}))
		);
		return { kind: 'set_inputs', scenario: scenario.id, entries };
	},
	add_quantity: (workbook, dice) => ({
		kind: 'add_quantity',
		sheet: dice.roll(workbook.sheets.length),
		index: dice.roll(4),
		quantity: randomQuantity(workbook, dice, dice.pick(['new_one', 'valueOf', 'q1']))
	}),
	replace_quantity: (workbook, dice) => {
		const old = anyQuantity(workbook, dice);
		if (!old) return null;
		const name = dice.pick([old.name, 'renamed', 'valueOf']);
		const quantity = dice.chance(50)
			? { ...old, name, label: 'Relabelled', other_names: [old.label] }
			: randomQuantity(workbook, dice, name);
		return { kind: 'replace_quantity', name: old.name, quantity, also: dice.chance(50) };
	},
	remove_quantity: (workbook, dice) => {
		const name = anyQuantity(workbook, dice)?.name;
		return name === undefined ? null : { kind: 'remove_quantity', name, also: dice.chance(50) };
	},
	move_quantity: (workbook, dice) => {
		const name = anyQuantity(workbook, dice)?.name;
		const sheet = dice.roll(workbook.sheets.length);
		return name === undefined ? null : { kind: 'move_quantity', name, sheet, index: dice.roll(4) };
	},
	add_sheet: (workbook, dice) => ({
		kind: 'add_sheet',
		index: dice.roll(3),
		sheet: { title: 'More', quantities: [randomQuantity(workbook, dice, 'on_new_sheet')] }
	}),
	rename_sheet: (workbook, dice) => ({
		kind: 'rename_sheet',
		sheet: dice.roll(workbook.sheets.length),
		title: 'Renamed',
		note: dice.pick([undefined, null, 'a note'])
	}),
	remove_sheet: (workbook, dice) => ({
		kind: 'remove_sheet',
		sheet: dice.roll(workbook.sheets.length),
		also: dice.chance(50)
	}),
	move_sheet: (workbook, dice) => ({
		kind: 'move_sheet',
		sheet: dice.roll(workbook.sheets.length),
		index: dice.roll(3)
	}),
	add_set: (workbook, dice) => ({
		kind: 'add_set',
		index: dice.roll(3),
		set: {
			...{ name: dice.pick(['colour', 'product', '__proto__']), label: 'Colour' },
			members: dice.chance(50) ? [] : [{ id: 'white' }, { id: 'red', number: 2 }]
		}
	}),
	describe_set: (workbook, dice) => {
		const set = dice.pick(workbook.sets);
		return {
			...{ kind: 'describe_set', set: set.name, label: dice.pick(['Another', set.label]) },
			plural: dice.pick([undefined, 'Others']),
			note: dice.pick([undefined, 'A note.']),
			number_unit: set.number_unit
		};
	},
	/** The makers need one at least. */
	remove_set: (workbook, dice) =>
		workbook.sets.length > 1 ? { kind: 'remove_set', set: dice.pick(workbook.sets).name } : null,
	add_member: (workbook, dice) => {
		const set = dice.pick(workbook.sets);
		const command = {
			kind: 'add_member',
			set: set.name,
			index: dice.roll(4),
			member: { id: dice.pick(['__proto__', 'isPrototypeOf', 'new 1', 'PX15B']) }
		} as const;
		return set.members.length > 0 && dice.chance(70)
			? { ...command, like: dice.pick(set.members).id }
			: command;
	},
	remove_member: (workbook, dice) => {
		const set = dice.pick(workbook.sets);
		const id = dice.pick(set.members)?.id;
		return id === undefined
			? null
			: { kind: 'remove_member', set: set.name, id, also: dice.chance(60) };
	},
	replace_member: (workbook, dice) => {
		const set = dice.pick(workbook.sets);
		const id = dice.pick(set.members)?.id;
		const to = dice.pick(['__proto__', 'renamed 2', 'PX15B', id ?? '']);
		return id === undefined
			? null
			: { kind: 'replace_member', set: set.name, id, member: { id: to, label: 'Another' } };
	},
	move_member: (workbook, dice) => {
		const set = dice.pick(workbook.sets);
		const id = dice.pick(set.members)?.id;
		return id === undefined
			? null
			: { kind: 'move_member', set: set.name, id, index: dice.roll(4) };
	},
	set_relation_pair: (workbook, dice) => {
		const relation = workbook.relations?.[0];
		if (!relation) return null;
		const pair = relation.sets.map((set) => dice.pick(findSet(workbook, set)?.members ?? [])?.id);
		if (pair.some((id) => id === undefined)) return null;
		const ids = pair as string[];
		const stands = relation.pairs.some((pair) => pairKey(pair) === pairKey(ids));
		return { kind: 'set_relation_pair', relation: relation.name, pair: ids, exists: !stands };
	},
	add_scenario: (workbook, dice) => ({
		kind: 'add_scenario',
		index: dice.roll(4),
		scenario: randomScenario(workbook, dice, dice.pick(['another', 'propertyIsEnumerable']))
	}),
	replace_scenario: (workbook, dice) => {
		const { changes: _changes, ...header } = dice.pick(workbook.scenarios);
		const isBase = header.parent === null;
		const parent = isBase || dice.chance(50) ? header.parent : dice.pick(workbook.scenarios).id;
		const id = dice.pick([header.id, 'renamed']);
		return {
			kind: 'replace_scenario',
			id: header.id,
			scenario: { ...header, id, parent, title: 'Retitled' }
		};
	},
	remove_scenario: (workbook, dice) => ({
		kind: 'remove_scenario',
		id: dice.pick(workbook.scenarios).id
	}),
	move_scenario: (workbook, dice) => ({
		kind: 'move_scenario',
		id: dice.pick(workbook.scenarios).id,
		index: dice.roll(4)
	}),
	promote_scenario: (workbook, dice) => ({
		kind: 'promote_scenario',
		id: dice.pick(workbook.scenarios).id,
		...(dice.chance(50) && { hold: [dice.pick(workbook.scenarios).id] }),
		...(dice.chance(30) && { against: dice.pick(columnsOf(workbook)).id })
	}),
	quote_on: (workbook, dice) => ({ kind: 'quote_on', id: dice.pick(workbook.scenarios).id }),
	put_study: (workbook, dice) => {
		const study = randomStudy(workbook, dice, dice.pick(['added', ...STUDY_NAMES]));
		const old = dice.pick(workbook.studies ?? [])?.name;
		return old === undefined || dice.chance(50)
			? { kind: 'put_study', study, ...(dice.chance(50) ? { index: dice.roll(3) } : {}) }
			: { kind: 'put_study', study, name: old };
	},
	remove_study: (workbook, dice) => {
		const name = dice.pick(workbook.studies ?? [])?.name;
		return name === undefined ? null : { kind: 'remove_study', name };
	},
	set_ran: (workbook, dice) => {
		const name = dice.pick(workbook.studies ?? [])?.name;
		if (name === undefined) return null;
		const ran = { stood_on: 'def', headline: [{ label: 'NPV', value: 1.5, unit: 'kEUR' }] };
		return dice.chance(70) ? { kind: 'set_ran', name, ran } : { kind: 'set_ran', name };
	},
	put_programme: (workbook, dice) => {
		const programme = randomProgramme(workbook, dice);
		if (!programme) return null;
		const old = dice.pick(workbook.programmes ?? [])?.name;
		return { kind: 'put_programme', programme, ...(old !== undefined && { name: old }) };
	},
	remove_programme: (workbook, dice) => {
		const name = dice.pick(workbook.programmes ?? [])?.name;
		return name === undefined ? null : { kind: 'remove_programme', name };
	},
	set_plans: (workbook, dice) => {
		const programme = dice.pick(workbook.programmes ?? []);
		if (!programme) return null;
		const at = { programme: programme.name, scenario: dice.pick(workbook.scenarios).id };
		if (dice.chance(30)) return { kind: 'set_plans', plans: [at] };
		const values = [{ quantity: programme.decisions[0]!, value: dice.roll(9) }];
		return { kind: 'set_plans', plans: [{ ...at, digest: 'abc', objective: 1.5, values }] };
	},
	set_ticks: (workbook, dice) => {
		const id = dice.pick(workbook.reviewed ?? [])?.id;
		if (id !== undefined && dice.chance(50)) return { kind: 'set_ticks', ticks: [{ id }] };
		const tick = { id: dice.pick(['literal a', 'copy b']), of: 'f00', by: 'Ada', reason: 'so' };
		return { kind: 'set_ticks', ticks: [tick] };
	},
	note_change: (workbook, dice) => {
		const scenario = dice.pick(workbook.scenarios);
		const quantity = dice.pick(scenario.changes)?.quantity;
		if (quantity === undefined) return null;
		const note = dice.chance(70) ? { note: dice.pick(['from a log', 'a guess']) } : {};
		return { kind: 'note_change', scenario: scenario.id, quantity, ...note };
	},
	put_calibration: (workbook, dice) => {
		const calibration = randomCalibration(workbook, dice, dice.pick(['load', 'stops']));
		const old = dice.pick(workbook.calibrations ?? [])?.name;
		return old === undefined || dice.chance(50)
			? { kind: 'put_calibration', calibration }
			: { kind: 'put_calibration', calibration, name: old };
	},
	add_frozen: (workbook, dice) => {
		const frozen = randomFrozen(workbook, dice, dice.pick(['budget', 'standard']));
		return frozen && { kind: 'add_frozen', frozen };
	},
	describe_frozen: (workbook, dice) => {
		const id = dice.pick(workbook.frozen ?? [])?.id;
		if (id === undefined) return null;
		const note = dice.chance(50) ? { note: 'as approved' } : {};
		return { kind: 'describe_frozen', id, title: dice.pick(['Budget', 'Plan']), ...note };
	},
	remove_frozen: (workbook, dice) => {
		const id = dice.pick(workbook.frozen ?? [])?.id;
		return id === undefined ? null : { kind: 'remove_frozen', id, also: dice.chance(50) };
	},
	remove_calibration: (workbook, dice) => {
		const name = dice.pick(workbook.calibrations ?? [])?.name;
		return name === undefined ? null : { kind: 'remove_calibration', name };
	},
	put_quote: (workbook, dice) => {
		const old = dice.pick(workbook.quotes ?? []);
		if (old && dice.chance(50))
			return {
				kind: 'put_quote',
				quote: { ...old, state: 'lost', reason: dice.pick(['price', 'time']) }
			};
		const quote = randomQuote(workbook, dice, dice.pick(['quote_a', 'quote_b', 'quote_c']));
		return { kind: 'put_quote', quote };
	},
	remove_quote: (workbook, dice) => {
		const id = dice.pick(workbook.quotes ?? [])?.id;
		return id === undefined ? null : { kind: 'remove_quote', id };
	},
	set_letterhead: (_workbook, dice) => ({
		kind: 'set_letterhead',
		letterhead: dice.chance(70)
			? { name: dice.pick(['Marram', 'Works']), ...(dice.chance(50) && { foot: 'Bank' }) }
			: {}
	}),
	put_table: (workbook, dice) => {
		const table = randomTable(workbook, dice, dice.pick(['Items', 'Machines']));
		const old = dice.pick(workbook.tables ?? [])?.title;
		return old === undefined || dice.chance(50)
			? { kind: 'put_table', table }
			: { kind: 'put_table', table, title: old };
	},
	remove_table: (workbook, dice) => {
		const title = dice.pick(workbook.tables ?? [])?.title;
		return title === undefined ? null : { kind: 'remove_table', title };
	},
	set_title: () => ({ kind: 'set_title', title: 'Another title' }),
	set_about: (_workbook, dice) =>
		dice.chance(50) ? { kind: 'set_about', about: 'What it is for' } : { kind: 'set_about' },
	set_invented: (_workbook, dice) => ({ kind: 'set_invented', invented: dice.chance(50) }),
	patch: (workbook, dice) => {
		const command = MAKERS[dice.pick(PLAIN_KINDS)](workbook, dice);
		const result = command && applyCommand(workbook, command);
		const patch = result?.ok ? patchBetween(workbook, result.workbook) : null;
		return patch && { kind: 'patch', patch };
	},
	several: (workbook, dice) => {
		const commands: Command[] = [];
		let here = workbook;
		for (let i = 0; i < 3; i++) {
			const command = MAKERS[dice.pick(PLAIN_KINDS)](here, dice);
			const result = command && applyCommand(here, command);
			if (!result?.ok) continue;
			commands.push(command!);
			here = result.workbook;
		}
		return { kind: 'several', commands };
	}
};

/** Those that are not made of others. */
const PLAIN_KINDS = (Object.keys(MAKERS) as Command['kind'][]).filter(
	(kind) => !['patch', 'several'].includes(kind)
);
export const KINDS = Object.keys(MAKERS) as Command['kind'][];
