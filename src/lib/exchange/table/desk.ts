/**
 * A file on the desk while a person says what its columns mean: its rows stay here, away from the page, which gets
 * heads, samples and what would change.
 */
import { layOut, type Layout } from '$lib/engine/layout';
import type { Calibration } from '$lib/workbook/calibration-schema';
import { findRelation } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { hasOpenDates } from './dates';
import { decimalSigns, type ColumnSign } from './decimals';
import { sampleOf, type Cell, type Grid } from './grid';
import type { TypicalEntries } from './implausible';
import { lookOver, type Look } from './look';
import type { UnknownMember } from './import-table';
import type { Mapping } from './mapping';
import type { MemberChoices } from './new-members';
import { proposePairs, type PairMapping } from './pair-mapping';
import { lookOverPairs, type PairsLooked } from './pairs';
import { proposeMapping } from './propose';
import type { Log } from '../log/log';
import { lookOverLog, type LogLook } from '../log/look';
import { proposeLog, type LogProposed } from '../log/propose-log';
import { sha256 } from '../log/sha256';
import {
	proposePoints,
	readPoints,
	type PointMapping,
	type PointsRead
} from '../points/read-points';
import { readTables, type TableSheet } from './read-file';

export interface HeldSheet {
	readonly name: string;
	/** Why it cannot be brought in; null where it can. */
	readonly message: string | null;
	readonly head: readonly string[];
	readonly rows: number;
	/** The first cells of each column that hold something. */
	readonly samples: readonly (readonly Cell[])[];
	readonly signs: readonly ColumnSign[];
	/** Columns with dates of which a person may say whether the day or the month comes first. */
	readonly openDates: readonly boolean[];
	readonly remarks: readonly string[];
}

export type Held =
	| { readonly ok: true; readonly sheets: readonly HeldSheet[] }
	| { readonly ok: false; readonly message: string };

/** Of what cannot be taken the first, and how many there are. */
export type ShortLook = Look & { readonly refused: number };
export type ShortLooked =
	| { readonly ok: true; readonly look: ShortLook }
	| { readonly ok: false; readonly message: string };

const SAMPLES = 3;
const MOST_TOLD = 500;

/** Tables that come into one workbook together share how it is laid out. */
export class LastLayout {
	#layout: Layout | null = null;

	of(workbook: Workbook): Layout {
		if (this.#layout?.workbook !== workbook) this.#layout = layOut(workbook);
		return this.#layout;
	}
}

export class TableDesk {
	#sheets: readonly TableSheet[] = [];
	#bytes: Uint8Array = new Uint8Array();
	#digest: string | null = null;
	#workbook: Workbook | null = null;
	/** Names that no member had at the last look, so that what is decided of them reads the rows once. */
	#unknown: { readonly asked: string; readonly names: readonly UnknownMember[] } | null = null;

	constructor(readonly layouts = new LastLayout()) {}

	async read(bytes: Uint8Array, name: string, told?: (share: number) => void): Promise<Held> {
		const read = await readTables(bytes, name, told);
		if (!read.ok) return read;
		this.#sheets = read.sheets;
		this.#bytes = bytes;
		this.#digest = null;
		this.#unknown = null;
		return { ok: true, sheets: read.sheets.map(heldSheet) };
	}

	propose(sheet: number, workbook: Workbook): Mapping {
		const grid = this.#grid(sheet);
		return grid ? proposeMapping(grid, workbook) : { quantity: null, columns: [] };
	}

	look(
		sheet: number,
		mapping: Mapping,
		choices: MemberChoices,
		workbook: Workbook,
		told?: (share: number) => void,
		typical?: TypicalEntries
	): ShortLooked {
		const grid = this.#grid(sheet);
		if (!grid) throw new RangeError(`There is no sheet ${sheet} to look over.`);
		const layout = this.#layoutOf(workbook);
		const asked = JSON.stringify([sheet, mapping]);
		const known = this.#unknown?.asked === asked ? this.#unknown.names : undefined;
		const looked = lookOver(grid, mapping, choices, layout, told, known, typical);
		if (!looked.ok) return looked;
		this.#unknown = { asked, names: looked.look.unknown };
		const { problems } = looked.look;
		const look = {
			...looked.look,
			problems: problems.slice(0, MOST_TOLD),
			refused: problems.length
		};
		return { ok: true, look };
	}

	proposePairs(sheet: number, name: string, workbook: Workbook): PairMapping {
		const grid = this.#grid(sheet);
		const relation = findRelation(workbook, name);
		return grid && relation
			? proposePairs(grid, relation, workbook)
			: { relation: name, of: [null, null], mark: null };
	}

	lookPairs(
		sheet: number,
		mapping: PairMapping,
		choices: MemberChoices,
		workbook: Workbook
	): PairsLooked {
		const grid = this.#grid(sheet);
		if (!grid) throw new RangeError(`There is no sheet ${sheet} to look over.`);
		return lookOverPairs(grid, mapping, choices, workbook);
	}

	proposeLog(sheet: number, workbook: Workbook, wanted: readonly string[]): LogProposed {
		const grid = this.#grid(sheet);
		if (!grid) throw new RangeError(`There is no sheet ${sheet} to read.`);
		return proposeLog(grid, workbook, wanted);
	}

	lookLog(
		sheet: number,
		log: Log,
		workbook: Workbook,
		told?: (share: number) => void,
		typical?: TypicalEntries
	): LogLook & { readonly digest: string } {
		const grid = this.#grid(sheet);
		if (!grid) throw new RangeError(`There is no sheet ${sheet} to look over.`);
		const layout = this.#layoutOf(workbook);
		this.#digest ??= sha256(this.#bytes);
		return { ...lookOverLog(grid, log, layout, told, typical), digest: this.#digest };
	}

	proposePoints(sheet: number, fit: Calibration, workbook: Workbook): PointMapping {
		return proposePoints(this.#gridThere(sheet), fit, workbook);
	}

	points(
		sheet: number,
		mapping: PointMapping,
		fit: Calibration,
		workbook: Workbook
	): { readonly read: PointsRead; readonly digest: string } {
		this.#digest ??= sha256(this.#bytes);
		return {
			read: readPoints(this.#gridThere(sheet), mapping, fit, workbook),
			digest: this.#digest
		};
	}

	#layoutOf(workbook: Workbook): Layout {
		if (this.#workbook !== workbook) this.#unknown = null;
		this.#workbook = workbook;
		return this.layouts.of(workbook);
	}

	#gridThere(sheet: number): Grid {
		const grid = this.#grid(sheet);
		if (!grid) throw new RangeError(`There is no sheet ${sheet} to read.`);
		return grid;
	}

	#grid(sheet: number): Grid | null {
		const read = this.#sheets[sheet]?.grid;
		return read?.ok ? read.grid : null;
	}
}

function heldSheet({ name, grid, remarks }: TableSheet): HeldSheet {
	if (!grid.ok)
		return {
			name,
			message: grid.message,
			head: [],
			rows: 0,
			samples: [],
			signs: [],
			openDates: [],
			remarks
		};
	const { head, rows } = grid.grid;
	return {
		name,
		message: null,
		head,
		rows: rows.length,
		samples: head.map((_, column) => sampleOf(grid.grid, column, SAMPLES)),
		signs: decimalSigns(grid.grid),
		openDates: head.map((_, column) => hasOpenDates(sampleOf(grid.grid, column))),
		remarks
	};
}
