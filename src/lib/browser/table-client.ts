/** Asks the worker that holds a table. It gets the workbook once, and anew only where it has changed. */
import type { TypicalEntries } from '$lib/exchange/table/implausible';
import type { Log } from '$lib/exchange/log/log';
import type { PointMapping } from '$lib/exchange/points/read-points';
import type { MemberChoices } from '$lib/exchange/table/new-members';
import type { PairMapping } from '$lib/exchange/table/pair-mapping';
import type { Mapping } from '$lib/exchange/table/mapping';
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { Workbook } from '$lib/workbook/schema';
import type { TableAnswer, TableAnswers, TableMessage, TableRequest } from './table-messages';
import TableWorker from './table.worker?worker';

type Told = (share: number) => void;

export class TableClient {
	readonly #worker = new TableWorker();
	readonly #waiting = new Map<number, { done: (answer: TableAnswer) => void; told: Told }>();
	#workbook: Workbook | null = null;
	#last = 0;

	constructor() {
		this.#worker.onmessage = ({ data }: MessageEvent<TableAnswer>) => {
			const waiting = this.#waiting.get(data.id);
			if ('share' in data) return waiting?.told(data.share);
			this.#waiting.delete(data.id);
			waiting?.done(data);
		};
		this.#worker.onerror = () => {
			const failed = 'The part of the program that reads tables could not be fetched.';
			for (const [id, { done }] of this.#waiting) done({ id, failed });
			this.#waiting.clear();
		};
	}

	read(bytes: Uint8Array<ArrayBuffer>, name: string, told: Told): Promise<TableAnswers['read']> {
		return this.#ask({ kind: 'read', bytes, name }, told);
	}

	propose(workbook: Workbook, sheet: number): Promise<TableAnswers['propose']> {
		this.#know(workbook);
		return this.#ask({ kind: 'propose', sheet });
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
		this.#know(workbook);
		return this.#ask({ kind: 'look', ...asked }, told);
	}

	proposePairs(
		workbook: Workbook,
		sheet: number,
		relation: string
	): Promise<TableAnswers['propose_pairs']> {
		this.#know(workbook);
		return this.#ask({ kind: 'propose_pairs', sheet, relation });
	}

	lookPairs(
		workbook: Workbook,
		asked: { sheet: number; mapping: PairMapping; choices: MemberChoices }
	): Promise<TableAnswers['look_pairs']> {
		this.#know(workbook);
		return this.#ask({ kind: 'look_pairs', ...asked });
	}

	proposeLog(
		workbook: Workbook,
		sheet: number,
		wanted: readonly string[]
	): Promise<TableAnswers['propose_log']> {
		this.#know(workbook);
		return this.#ask({ kind: 'propose_log', sheet, wanted });
	}

	lookLog(
		workbook: Workbook,
		asked: { sheet: number; log: Log; typical: TypicalEntries },
		told: Told
	): Promise<TableAnswers['look_log']> {
		this.#know(workbook);
		return this.#ask({ kind: 'look_log', ...asked }, told);
	}

	/** The fit goes without its points: they say nothing of the table. */
	proposePoints(
		workbook: Workbook,
		sheet: number,
		fit: Calibration
	): Promise<TableAnswers['propose_points']> {
		this.#know(workbook);
		return this.#ask({ kind: 'propose_points', sheet, fit });
	}

	points(
		workbook: Workbook,
		asked: { sheet: number; mapping: PointMapping; fit: Calibration }
	): Promise<TableAnswers['points']> {
		this.#know(workbook);
		return this.#ask({ kind: 'points', ...asked });
	}

	stop(): void {
		this.#worker.terminate();
	}

	#know(workbook: Workbook): void {
		if (workbook === this.#workbook) return;
		this.#workbook = workbook;
		this.#send({ kind: 'workbook', workbook });
	}

	#send(request: TableRequest): number {
		const message: TableMessage = { id: ++this.#last, request };
		this.#worker.postMessage(message);
		return message.id;
	}

	#ask<T extends TableAnswers[keyof TableAnswers]>(
		request: TableRequest,
		told: Told = () => undefined
	): Promise<T> {
		return new Promise<T>((resolve, reject) => {
			const done = (answer: TableAnswer) => {
				if ('answer' in answer) resolve(answer.answer as T);
				else if ('failed' in answer) reject(new Error(answer.failed));
			};
			this.#waiting.set(this.#send(request), { done, told });
		});
	}
}
