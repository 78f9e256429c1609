/** Points of a fit from a table: which column holds what, each number in the unit of its axis, what is left out and why. */
import { UnitSystem } from '$lib/units/system';
import { MOST_POINTS, type Calibration, type Point } from '$lib/workbook/calibration-schema';
import { findSet } from '$lib/workbook/lookup';
import { LIMITS, type Workbook } from '$lib/workbook/schema';
import { readUnit, type UnitRead } from '../table/column-unit';
import { decimalSigns } from '../table/decimals';
import { columnName, sampleOf, type Grid, type Row } from '../table/grid';
import { headingReadings, wordsOf } from '../table/heading';
import { memberNamed } from '../table/member-named';
import { numberParts, quoted, readNumber } from '../table/number-text';
import { textOf } from '../table/row-parts';

export const POINT_PARTS = ['at', 'of', 'group', 'x', 'y'] as const;
export type PointPart = (typeof POINT_PARTS)[number];

export interface PointMapping {
	/** The place of the column of each part; null where none holds it. */
	readonly columns: Readonly<Record<PointPart, number | null>>;
	/** As tables write them; empty: as the fit has them. */
	readonly units: { readonly x: string; readonly y: string };
}

/** What a point of the fit has, and whether it must. */
export const partsOfPoint = ({ each, over, x, form }: Calibration): readonly PointPart[] =>
	POINT_PARTS.filter(
		(part) =>
			part === 'y' ||
			(part === 'at' && each !== undefined) ||
			((part === 'of' || part === 'group') && over !== undefined) ||
			(part === 'x' && x !== undefined && form !== 'shares')
	);

export function proposePoints(grid: Grid, fit: Calibration, workbook: Workbook): PointMapping {
	const parts = partsOfPoint(fit);
	const numbers = grid.head.flatMap((_, at) => {
		const sample = sampleOf(grid, at, 50);
		const held = sample.filter((cell) => typeof cell === 'number' || numberParts(cell) !== null);
		return sample.length > 0 && held.length === sample.length ? [at] : [];
	});
	const named = (label: string | undefined) =>
		label === undefined
			? -1
			: grid.head.findIndex((heading) =>
					headingReadings(heading).some(({ words }) => words === wordsOf(label))
				);
	const ofSet = (name: string | undefined) => {
		const set = name === undefined ? undefined : findSet(workbook, name);
		if (!set) return -1;
		const called = [set.name, set.label, set.plural].map(named).find((at) => at >= 0);
		return (
			called ??
			grid.head.findIndex((_, at) => {
				const sample = sampleOf(grid, at, 50);
				return sample.length > 0 && sample.every((cell) => memberNamed(set, String(cell)) !== null);
			})
		);
	};
	const found: Record<PointPart, number> = {
		at: parts.includes('at') ? ofSet(fit.each) : -1,
		of: parts.includes('of') ? ofSet(fit.over) : -1,
		group: -1,
		x: parts.includes('x') ? named(fit.x?.label) : -1,
		y: named(fit.y.label)
	};
	// The only column of numbers that is left can be the only thing that is sought.
	const left = numbers.filter((at) => !Object.values(found).includes(at));
	if (found.y < 0 && (found.x >= 0 || !parts.includes('x')) && left.length === 1)
		found.y = left[0]!;
	const column = (at: number) => (at < 0 ? null : at);
	const unitOf = (at: number) =>
		at < 0 ? '' : (headingReadings(grid.head[at]!).find(({ marked }) => marked)?.unit ?? '');
	return {
		columns: {
			at: column(found.at),
			of: column(found.of),
			group: null,
			x: column(found.x),
			y: column(found.y)
		},
		units: { x: unitOf(found.x), y: unitOf(found.y) }
	};
}

export type PointsRead =
	| {
			readonly ok: true;
			readonly points: readonly Point[];
			/** Rows that are left out, with their lines: at most two hundred are told. */
			readonly left: readonly { readonly line: number; readonly message: string }[];
			readonly leftRows: number;
	  }
	| { readonly ok: false; readonly message: string };

const TOLD = 200;

export function readPoints(
	grid: Grid,
	mapping: PointMapping,
	fit: Calibration,
	workbook: Workbook
): PointsRead {
	const { columns } = mapping;
	const parts = partsOfPoint(fit);
	const setOf = { at: fit.each, of: fit.over };
	for (const part of parts)
		if (part !== 'group' && columns[part] === null) {
			const what =
				part === 'x' || part === 'y'
					? fit[part]!.label
					: (findSet(workbook, setOf[part]!)?.label ?? part);
			return { ok: false, message: `Say which column holds ${what}.` };
		}
	const { system } = UnitSystem.create(workbook.units ?? []);
	const unit = (part: 'x' | 'y'): UnitRead =>
		readUnit(mapping.units[part], fit[part]?.unit ?? '1', system);
	const [x, y] = [unit('x'), unit('y')];
	if (!x.ok) return { ok: false, message: `${fit.x?.label}: ${x.message}` };
	if (!y.ok) return { ok: false, message: `${fit.y.label}: ${y.message}` };
	const signs = decimalSigns(grid);
	const points: Point[] = [];
	const left: { line: number; message: string }[] = [];
	let leftRows = 0;

	const cell = (row: Row, part: PointPart) => textOf(row.cells[columns[part] ?? -1] ?? '');
	const number = (row: Row, part: 'x' | 'y', toOwn: (value: number) => number) => {
		const given = cell(row, part);
		const name = columnName(grid, columns[part]!);
		if (given === '') throw new Left(`${name} is empty.`);
		if (typeof given === 'number') return toOwn(given);
		const read = readNumber(given, signs[columns[part]!]?.sign ?? null);
		if (!read.ok) throw new Left(`${name}: ${read.message}`);
		if (read.unit === '') return toOwn(read.value);
		const own = readUnit(read.unit, fit[part]?.unit ?? '1', system);
		if (!own.ok) throw new Left(`${name}: ${own.message}`);
		return own.toOwn(read.value);
	};
	const member = (row: Row, part: 'at' | 'of') => {
		const set = findSet(workbook, setOf[part]!);
		const text = String(cell(row, part));
		const id = set && memberNamed(set, text);
		if (!id)
			throw new Left(`There is no ${set?.label.toLowerCase() ?? setOf[part]} ${quoted(text)}.`);
		return id;
	};
	for (const row of grid.rows)
		try {
			points.push({
				...(parts.includes('at') && { at: member(row, 'at') }),
				...(parts.includes('of') && { of: member(row, 'of') }),
				...(columns.group !== null &&
					parts.includes('group') && { group: String(cell(row, 'group')).slice(0, LIMITS.label) }),
				...(parts.includes('x') && { x: number(row, 'x', x.toOwn) }),
				y: number(row, 'y', y.toOwn)
			});
		} catch (reason) {
			if (!(reason instanceof Left)) throw reason;
			leftRows++;
			if (left.length < TOLD) left.push({ line: row.line, message: reason.message });
		}
	if (points.length > MOST_POINTS)
		return {
			ok: false,
			message: `The table has ${points.length} points; at most ${MOST_POINTS} are kept of one. Sum or part it first.`
		};
	return { ok: true, points, left, leftRows };
}

/** Why a row is left out; never leaves this file. */
class Left extends Error {}
