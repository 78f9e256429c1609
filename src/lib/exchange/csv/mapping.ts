/**
 * What the columns of a file mean: which names the quantity, which its members, which holds values and for which
 * scenario. A first guess is made from the names of the columns and from what stands in them; a person
 * corrects it.
 */
import { readDate } from '$lib/workbook/date-text';
import { findQuantity, memberPlaces } from '$lib/workbook/lookup';
import type { SetDefinition, Workbook } from '$lib/workbook/schema';
import type { CsvGrid } from './rows';
import { MEMBER_MARK, OUT_OF_DATE } from './sheet';

export type Meaning =
	| { readonly is: 'nothing' }
	/** The quantity, by its name or label. */
	| { readonly is: 'quantity' }
	/** All members of the value, in the order of the quantity's sets. */
	| { readonly is: 'members' }
	/** A member of one set, or of an axis by its name. */
	| { readonly is: 'member'; readonly of: string }
	| { readonly is: 'unit' }
	/** Values; where the column stands for a member, of that. */
	| {
			readonly is: 'value';
			readonly scenario: string;
			readonly member: { readonly of: string; readonly id: string } | null;
	  };

export interface Mapping {
	/** The quantity of every row, where no column names one. */
	readonly quantity: string | null;
	readonly columns: readonly Meaning[];
}

const SAMPLE = 200;
const ENOUGH = 0.6;

export function proposeMapping(grid: CsvGrid, workbook: Workbook): Mapping {
	const base = workbook.scenarios[0]?.id ?? '';
	const quantities = new Set<string>();
	for (const sheet of workbook.sheets)
		for (const { name, label } of sheet.quantities) quantities.add(name).add(label.toLowerCase());
	let quantity = false;
	const columns = grid.head.map((name, column): Meaning => {
		const said = name.toLowerCase();
		const cells = grid.rows
			.slice(0, SAMPLE)
			.map(({ cells: all }) => all[column] ?? '')
			.filter((cell) => cell !== '');
		const share = (is: (cell: string) => boolean) =>
			cells.length === 0 ? 0 : cells.filter(is).length / cells.length;
		if (
			!quantity &&
			share((cell) => quantities.has(cell) || quantities.has(cell.toLowerCase())) > ENOUGH
		) {
			quantity = true;
			return { is: 'quantity' };
		}
		if (said === 'unit') return { is: 'unit' };
		if (said === OUT_OF_DATE) return { is: 'nothing' };
		if (
			said === 'for' ||
			(cells.length > 0 && share((cell) => cell.includes(MEMBER_MARK)) > ENOUGH)
		)
			return { is: 'members' };
		const scenario = workbook.scenarios.find(
			({ id, title }) => id.toLowerCase() === said || title.toLowerCase() === said
		);
		if (scenario) return { is: 'value', scenario: scenario.id, member: null };
		const set = setFor(workbook, said, share);
		if (set) return { is: 'member', of: set.name };
		if (share(looksNumeric) < ENOUGH) return { is: 'nothing' };
		const member = memberCalled(workbook, name);
		return { is: 'value', scenario: base, member };
	});
	const named = grid.head.find((name) => findQuantity(workbook, name) !== undefined);
	return { quantity: quantity ? null : (named ?? null), columns };
}

function setFor(
	workbook: Workbook,
	said: string,
	share: (is: (cell: string) => boolean) => number
): SetDefinition | undefined {
	const called = workbook.sets.find(
		({ name, label }) => name.toLowerCase() === said || label.toLowerCase() === said
	);
	if (called) return called;
	return workbook.sets.find((set) => share((cell) => memberPlaces(set).has(cell)) > ENOUGH);
}

function memberCalled(workbook: Workbook, name: string): { of: string; id: string } | null {
	for (const set of workbook.sets) {
		const member = set.members.find(
			({ id, label }) =>
				id.toLowerCase() === name.toLowerCase() || label?.toLowerCase() === name.toLowerCase()
		);
		if (member) return { of: set.name, id: member.id };
	}
	return null;
}

const looksNumeric = (cell: string) =>
	readDate(cell) !== null || /^[+\-−]?[\d.,' \u00a0\u202f]+(\s*\S{1,12})?$/.test(cell);
