/** Asks the worker about one table; `room` is where other tables are held beside it. */
import type { TypicalEntries } from '$lib/exchange/table/implausible';
import type { Log } from '$lib/exchange/log/log';
import type { PointMapping } from '$lib/exchange/points/read-points';
import type { MemberChoices } from '$lib/exchange/table/new-members';
import type { PairMapping } from '$lib/exchange/table/pair-mapping';
import type { Mapping } from '$lib/exchange/table/mapping';
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { Workbook } from '$lib/workbook/schema';
import type { TableAnswers } from './table-messages';
import { TableRoom, type Told } from './table-room';

export class TableClient {
	readonly #desk: number;

	constructor(readonly room = new TableRoom()) {
		this.#desk = room.open();
	}

	read(bytes: Uint8Array<ArrayBuffer>, name: string, told: Told): Promise<TableAnswers['read']> {
		return this.room.ask(this.#desk, { kind: 'read', bytes, name }, told);
	}

	propose(workbook: Workbook, sheet: number): Promise<TableAnswers['propose']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'propose', sheet });
	}

	look(
		workbook: Workbook,
		asked: {
			sheet: number;
			mapping: Mapping;
			choices: MemberChoices;
			typical: TypicalEntries;
		},
		told: Told
	): Promise<TableAnswers['look']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'look', ...asked }, told);
	}

	proposePairs(
		workbook: Workbook,
		sheet: number,
		relation: string
	): Promise<TableAnswers['propose_pairs']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'propose_pairs', sheet, relation });
	}

	lookPairs(
		workbook: Workbook,
		asked: { sheet: number; mapping: PairMapping; choices: MemberChoices }
	): Promise<TableAnswers['look_pairs']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'look_pairs', ...asked });
	}

	proposeLog(
		workbook: Workbook,
		sheet: number,
		wanted: readonly string[]
	): Promise<TableAnswers['propose_log']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'propose_log', sheet, wanted });
	}

	lookLog(
		workbook: Workbook,
		asked: { sheet: number; log: Log; typical: TypicalEntries },
		told: Told
	): Promise<TableAnswers['look_log']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'look_log', ...asked }, told);
	}

	/** The fit goes without its points: they say nothing of the table. */
	proposePoints(
		workbook: Workbook,
		sheet: number,
		fit: Calibration
	): Promise<TableAnswers['propose_points']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'propose_points', sheet, fit });
	}

	points(
		workbook: Workbook,
		asked: { sheet: number; mapping: PointMapping; fit: Calibration }
	): Promise<TableAnswers['points']> {
		this.room.know(workbook);
		return this.room.ask(this.#desk, { kind: 'points', ...asked });
	}

	stop(): void {
		this.room.leave(this.#desk);
	}
}
