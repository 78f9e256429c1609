/**
 * A first reading of a file's columns, from their headings and from what stands in them; a person corrects it.
 * Where a heading fits several quantities nothing is chosen.
 */
import { UnitSystem } from '$lib/units/system';
import { axesOf } from '$lib/workbook/axes';
import { hasInputs } from '$lib/workbook/cells';
import { findQuantity } from '$lib/workbook/lookup';
import type { Quantity, SetDefinition, Workbook } from '$lib/workbook/schema';
import { MEMBER_MARK, OUT_OF_DATE } from '../csv/sheet';
import { isDatedMonths } from './dated-months';
import { isDayFirst, readTableDate } from './dates';
import { decimalSigns } from './decimals';
import { sampleOf, type Cell, type Grid } from './grid';
import { wordsOf } from './heading';
import type { Mapping, Meaning } from './mapping';
import { matchHeading } from './match';
import { memberNamed } from './member-named';
import { numberParts } from './number-text';

const SAMPLE = 200;
const ENOUGH = 0.6;
const NOTHING: Meaning = { is: 'nothing' };

interface Proposed {
	readonly meaning: Meaning;
	readonly unit: string;
}

export function proposeMapping(grid: Grid, workbook: Workbook): Mapping {
	const samples = grid.head.map((_, column) => sampleOf(grid, column, SAMPLE));
	const { system: units } = UnitSystem.create(workbook.units ?? []);
	const frame = frameOf(grid.head, samples, workbook, units);
	const inRows = frame.flatMap((known) =>
		known?.meaning.is === 'member' ? [known.meaning.of] : []
	);
	const isLong = frame.some((known) => known?.meaning.is === 'quantity');
	const quantities = (of: readonly string[]) => (isLong ? [] : quantitiesFor(workbook, of));
	const base = workbook.scenarios[0]?.id ?? '';
	const named = isLong ? undefined : inRows[0];

	const columnOf = (name: string, column: number, candidates: readonly Quantity[]): Proposed => {
		const known = frame[column];
		if (known && !known.byCells) return { meaning: known.meaning, unit: '' };
		const sample = samples[column] ?? [];
		const kinds = candidates.filter((quantity) => takes(quantity, sample, workbook));
		const match = matchHeading(name, kinds, units);
		const value = { is: 'value', scenario: base, quantity: null, member: null } as const;
		const [quantity = null] = match.quantities;
		const member = numeric(sample) ? memberCalled(workbook, name, inRows) : null;
		if (quantity !== null && match.sure)
			return { meaning: { ...value, quantity }, unit: match.unit };
		if (known) return { meaning: known.meaning, unit: '' };
		if (member) return { meaning: { ...value, member }, unit: '' };
		if (quantity !== null)
			return { meaning: { is: 'asked', between: match.quantities }, unit: match.unit };
		if (named !== undefined && LABEL_HEADS.has(wordsOf(name)) && !numeric(sample))
			return { meaning: { is: 'label', of: named }, unit: '' };
		return { meaning: isLong && numeric(sample) ? value : NOTHING, unit: '' };
	};
	const read = (of: readonly string[], ofAll: readonly string[] = []) => {
		const candidates = quantities([...of, ...ofAll]);
		return grid.head.map((name, column) => columnOf(name, column, candidates));
	};
	// A file of one month seldom names it: where more headings are understood with the month than without, it is asked for.
	const month = workbook.sets.find((set) => isDatedMonths(set) && !inRows.includes(set.name));
	const plain = read(inRows);
	const dated = month && !isLong ? read(inRows, [month.name]) : plain;
	const ofMonth =
		month !== undefined &&
		(isLong ? namesOneOf(samples, workbook, month.name) : understood(dated) > understood(plain));
	const ofAll = ofMonth ? [month.name] : [];
	const first = ofMonth ? dated : plain;
	const stillNamed = first.flatMap(({ meaning }) => (meaning.is === 'member' ? [meaning.of] : []));
	// A column that holds a choice names no row: what is per its members only is not in this table.
	const isOther = stillNamed.length > 0 && stillNamed.length < inRows.length;
	const proposed = askedWhereTwice(isOther ? read(stillNamed, ofAll) : first);
	const holdsValues = proposed.some(
		({ meaning }) => meaning.is === 'value' || meaning.is === 'asked'
	);
	const signs = decimalSigns(grid);
	return {
		...(ofMonth && { all: ofAll.map((of) => ({ of, id: null })) }),
		quantity: isLong ? null : quantityInHead(grid.head, workbook, proposed),
		columns: proposed.map(({ meaning, unit }, column) => ({
			// Where no heading says anything, a person says what the numbers are.
			meaning:
				!holdsValues && meaning.is === 'nothing' && numeric(samples[column] ?? [])
					? { is: 'asked', between: [] }
					: meaning,
			unit,
			decimal: signs[column]?.sign ?? null,
			dayFirst: isDayFirst(sampleOf(grid, column))
		}))
	};
}

/** Columns whose quantity leaves no doubt. */
const understood = (columns: readonly Proposed[]): number =>
	columns.filter(({ meaning }) => meaning.is === 'value' && meaning.quantity !== null).length;

/** Whether a column that names quantities names one that is per the set. */
function namesOneOf(
	samples: readonly (readonly Cell[])[],
	workbook: Workbook,
	set: string
): boolean {
	const called = new Set(samples.flat().map((cell) => String(cell).toLowerCase()));
	return workbook.sheets.some(({ quantities }) =>
		quantities.some(
			(quantity) =>
				hasInputs(quantity) &&
				(called.has(quantity.name.toLowerCase()) || called.has(quantity.label.toLowerCase())) &&
				axesOf(quantity).some((axis) => axis.set === set)
		)
	);
}

const UNIT_HEADS = new Set(['unit', 'units', 'unit of measure', 'uom', 'einheit', 'me', 'unité']);

/** "kg", "EUR/100 m": a unit of the workbook. L1 is no litre. */
const isUnit = (cell: string, units: UnitSystem) =>
	cell.length < 40 &&
	/^[^\d]*(?:\/\s*\d[\d.,]*)?[^\d]*$/.test(cell) &&
	/\p{L}|%/u.test(cell) &&
	units.parse(cell.replace(/\d[\d.,]*\s*/g, '')).ok;

/** Headings under which item lists say in words what a thing is. */
const LABEL_HEADS = new Set([
	...['description', 'designation', 'name', 'label', 'text', 'item text'],
	...['bezeichnung', 'benennung', 'désignation', 'libellé']
]);

interface Known {
	readonly meaning: Meaning;
	/** Not by its heading, which may say that it holds a choice. */
	readonly byCells?: boolean;
}

/** Columns that name things, and those of a table that this program wrote; null for all others. */
function frameOf(
	head: readonly string[],
	samples: readonly (readonly Cell[])[],
	workbook: Workbook,
	units: UnitSystem
): (Known | null)[] {
	const taken = new Set<string>();
	return head.map((name, column): Known | null => {
		const said = name.toLowerCase();
		const share = shareOf(samples[column] ?? []);
		if (!taken.has('') && share((cell) => isQuantity(workbook, cell)) > ENOUGH) {
			taken.add('');
			return { meaning: { is: 'quantity' } };
		}
		if (UNIT_HEADS.has(wordsOf(name))) return { meaning: { is: 'unit' } };
		if (said === OUT_OF_DATE) return { meaning: NOTHING };
		if (said === 'for' || share((cell) => cell.includes(MEMBER_MARK)) > ENOUGH)
			return { meaning: { is: 'members' } };
		const scenario = workbook.scenarios.find(
			({ id, title }) => id.toLowerCase() === said || title.toLowerCase() === said
		);
		if (scenario)
			return { meaning: { is: 'value', scenario: scenario.id, quantity: null, member: null } };
		// A table of this program takes frozen copies along, which nothing is entered in.
		if (workbook.frozen?.some(({ id }) => id.toLowerCase() === said)) return { meaning: NOTHING };
		const byName = axisCalled(workbook, name);
		// "Month" over 2027-05: the dated month is meant, not the month of the year.
		const called = byName !== null && holdsMonths(byName, workbook, share) ? null : byName;
		// Numbers may be members of a set of days; they name things where they come first.
		const mayName =
			column === 0 ||
			!numeric(samples[column] ?? []) ||
			share((cell) => isMonthOf(workbook, cell)) > ENOUGH;
		const of = called ?? (mayName ? setOfCells(workbook, share, taken) : null);
		if (of === null && share((cell) => isUnit(cell, units)) > ENOUGH)
			return { meaning: { is: 'unit' } };
		if (of === null || taken.has(of)) return null;
		taken.add(of);
		return { meaning: { is: 'member', of }, byCells: called === null };
	});
}

const isMonthOf = ({ sets }: Workbook, cell: string): boolean =>
	sets.some((set) => isDatedMonths(set) && memberNamed(set, cell) !== null);

/** Whether a column that is called as a set holds dated months, and none of that set. */
function holdsMonths(
	name: string,
	workbook: Workbook,
	share: (is: (cell: string) => boolean) => number
): boolean {
	const set = workbook.sets.find((one) => one.name === name);
	return (
		set !== undefined &&
		!isDatedMonths(set) &&
		share((cell) => memberNamed(set, cell) !== null) === 0 &&
		share((cell) => isMonthOf(workbook, cell)) > ENOUGH
	);
}

const isQuantity = (workbook: Workbook, cell: string) =>
	findQuantity(workbook, cell) !== undefined || labelsOf(workbook).has(cell.toLowerCase());

const labels = new WeakMap<Workbook['sheets'], ReadonlySet<string>>();
function labelsOf({ sheets }: Workbook): ReadonlySet<string> {
	let known = labels.get(sheets);
	if (!known) {
		const all = sheets.flatMap(({ quantities }) =>
			quantities.map(({ label }) => label.toLowerCase())
		);
		labels.set(sheets, (known = new Set(all)));
	}
	return known;
}

/** The set, or the axis of a quantity, that a heading names. */
function axisCalled(workbook: Workbook, heading: string): string | null {
	const said = wordsOf(heading);
	const set = workbook.sets.find(({ name, label, plural }) =>
		[name, label, plural ?? name].some((word) => wordsOf(word) === said)
	);
	if (set) return set.name;
	for (const { quantities } of workbook.sheets)
		for (const quantity of quantities)
			for (const axis of axesOf(quantity)) if (wordsOf(axis.name) === said) return axis.name;
	return null;
}

function setOfCells(
	workbook: Workbook,
	share: (is: (cell: string) => boolean) => number,
	taken: ReadonlySet<string>
): string | null {
	let best: SetDefinition | null = null;
	let most = ENOUGH;
	for (const set of workbook.sets) {
		const held = taken.has(set.name) ? 0 : share((cell) => memberNamed(set, cell) !== null);
		// Of two that have all the names, the smaller one is meant.
		const isSmaller = best !== null && held === most && set.members.length < best.members.length;
		if (held > most || isSmaller) [best, most] = [set, held];
	}
	return best?.name ?? null;
}

/** Inputs whose every member a row names; where none does, those that have a single value. */
export function quantitiesFor(workbook: Workbook, inRows: readonly string[]): Quantity[] {
	return workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter((quantity) => {
			const axes = axesOf(quantity);
			return (
				hasInputs(quantity) &&
				axes.length > 0 === inRows.length > 0 &&
				axes.every(({ name, set }) => inRows.includes(name) || inRows.includes(set))
			);
		});
}

/** Whether what stands in the column can be values of the quantity at all. */
function takes({ type }: Quantity, sample: readonly Cell[], workbook: Workbook): boolean {
	if (sample.length === 0) return true;
	if (type === undefined || type === 'number') return numeric(sample);
	const share = shareOf(sample);
	if (type === 'yes_no')
		return share((cell) => /^(yes|no|true|false|y|n|0|1)$/i.test(cell)) > ENOUGH;
	const set = workbook.sets.find(({ name }) => name === type.member_of);
	return set !== undefined && share((cell) => memberNamed(set, cell) !== null) > ENOUGH;
}

/** A member of a set that no other column names, by the heading of the column that stands for it. */
function memberCalled(
	workbook: Workbook,
	heading: string,
	inRows: readonly string[]
): { of: string; id: string } | null {
	for (const set of workbook.sets) {
		const id = inRows.includes(set.name) ? null : memberNamed(set, heading);
		if (id !== null) return { of: set.name, id };
	}
	return null;
}

/** Two columns cannot both hold the same values. */
function askedWhereTwice(columns: readonly Proposed[]): Proposed[] {
	const key = ({ meaning }: Proposed) =>
		meaning.is === 'value' && meaning.quantity !== null ? meaning.quantity : null;
	const counts = new Map<string, number>();
	for (const column of columns) {
		const name = key(column);
		if (name !== null) counts.set(name, (counts.get(name) ?? 0) + 1);
	}
	return columns.map((column) => {
		const name = key(column);
		return name !== null && counts.get(name)! > 1
			? { ...column, meaning: { is: 'asked', between: [name] } }
			: column;
	});
}

/** A heading may name the quantity whose values stand under members. */
function quantityInHead(
	head: readonly string[],
	workbook: Workbook,
	proposed: readonly Proposed[]
): string | null {
	const open = proposed.some(({ meaning }) => meaning.is === 'value' && meaning.quantity === null);
	return open ? (head.find((name) => findQuantity(workbook, name) !== undefined) ?? null) : null;
}

const shareOf = (sample: readonly Cell[]) => (is: (cell: string) => boolean) =>
	sample.length === 0 ? 0 : sample.filter((cell) => is(String(cell))).length / sample.length;

/** Mostly numbers or dates. */
function numeric(sample: readonly Cell[]): boolean {
	const held = sample.filter((cell) => typeof cell === 'number' || looksNumeric(cell)).length;
	return sample.length > 0 && held / sample.length > ENOUGH;
}

const looksNumeric = (cell: string) => {
	const parts = numberParts(cell);
	return readTableDate(cell, true) !== null || (parts !== null && parts.unit.length <= 12);
};
