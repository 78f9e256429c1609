/**
 * The worker that holds tables on their way in, each on a desk of its own. It is started with the first and ends with
 * the last. It gets the workbook once, and anew only where that has changed: files that come in together share it.
 */
import type { Workbook } from '$lib/workbook/schema';
import type { TableAnswer, TableAnswers, TableMessage, TableRequest } from './table-messages';
import TableWorker from './table.worker?worker';

export type Told = (share: number) => void;

interface Waiting {
	readonly done: (answer: TableAnswer) => void;
	readonly told: Told;
}

export class TableRoom {
	#worker: Worker | null = null;
	#workbook: Workbook | null = null;
	readonly #desks = new Set<number>();
	readonly #waiting = new Map<number, Waiting>();
	#last = 0;
	#lastDesk = 0;

	/** The number of a free desk. */
	open(): number {
		this.#desks.add(++this.#lastDesk);
		this.#worker ??= this.#start();
		return this.#lastDesk;
	}

	leave(desk: number): void {
		if (!this.#desks.delete(desk)) return;
		if (this.#desks.size > 0) return void this.#send(desk, { kind: 'put_away' });
		this.#worker?.terminate();
		this.#worker = this.#workbook = null;
		this.#waiting.clear();
	}

	know(workbook: Workbook): void {
		if (workbook === this.#workbook) return;
		this.#workbook = workbook;
		this.#send(0, { kind: 'workbook', workbook });
	}

	ask<T extends TableAnswers[keyof TableAnswers]>(
		desk: number,
		request: TableRequest,
		told: Told = () => undefined
	): Promise<T> {
		return new Promise<T>((resolve, reject) => {
			const done = (answer: TableAnswer) => {
				if ('answer' in answer) resolve(answer.answer as T);
				else if ('failed' in answer) reject(new Error(answer.failed));
			};
			this.#waiting.set(this.#send(desk, request), { done, told });
		});
	}

	#start(): Worker {
		const worker = new TableWorker();
		worker.onmessage = ({ data }: MessageEvent<TableAnswer>) => {
			const waiting = this.#waiting.get(data.id);
			if ('share' in data) return waiting?.told(data.share);
			this.#waiting.delete(data.id);
			waiting?.done(data);
		};
		worker.onerror = () => {
			const failed = 'The part of the program that reads tables could not be fetched.';
			for (const [id, { done }] of this.#waiting) done({ id, failed });
			this.#waiting.clear();
		};
		return worker;
	}

	#send(desk: number, request: TableRequest): number {
		const message: TableMessage = { id: ++this.#last, desk, request };
		this.#worker?.postMessage(message);
		return message.id;
	}
}
