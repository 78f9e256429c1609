/** Points on their way in: a pasted block or a file, which column holds what, and what is left out. */
import { TableClient } from '$lib/browser/table-client';
import type { HeldSheet } from '$lib/exchange/table/desk';
import {
	partsOfPoint,
	type PointMapping,
	type PointPart,
	type PointsRead
} from '$lib/exchange/points/read-points';
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { Session } from '../session.svelte';
import { texts } from './texts';

export class Adding {
	sheets = $state.raw<readonly HeldSheet[]>([]);
	sheet = $state(0);
	mapping = $state.raw<PointMapping | null>(null);
	read = $state.raw<PointsRead | null>(null);
	source = $state('');
	problem = $state('');
	readonly held = $derived(this.sheets[this.sheet] ?? null);
	readonly parts: readonly PointPart[];
	readonly #fit: Calibration;
	#client: TableClient | null = null;
	#asked = 0;
	/** Of the file that is held; empty until it has been read. */
	#digest = '';

	constructor(
		readonly session: Session,
		calibration: Calibration
	) {
		const { data: _data, ...fit } = calibration;
		this.#fit = fit;
		this.parts = partsOfPoint(calibration);
	}

	async take(bytes: Uint8Array<ArrayBuffer>, name: string, isFile: boolean): Promise<void> {
		this.stop();
		this.sheets = [];
		this.problem = '';
		this.mapping = this.read = null;
		this.#digest = '';
		const client = (this.#client = new TableClient());
		const held = await client.read(bytes, name, () => undefined);
		if (client !== this.#client) return;
		if (!held.ok) {
			this.problem = held.message;
			return;
		}
		const first = held.sheets.findIndex(({ message }) => message === null);
		if (first < 0) {
			this.problem = held.sheets[0]?.message ?? '';
			return;
		}
		this.source = '';
		this.sheets = held.sheets;
		await this.choose(first);
		if (isFile && client === this.#client && this.#digest)
			this.source = texts.sourceLine(name, this.#digest);
	}

	async choose(sheet: number): Promise<void> {
		const { workbook } = this.session;
		this.sheet = sheet;
		this.read = null;
		if (!workbook || !this.#client || this.held?.message !== null) return;
		this.mapping = await this.#client.proposePoints(workbook, sheet, this.#fit);
		await this.follow();
	}

	async say(mapping: PointMapping): Promise<void> {
		this.mapping = mapping;
		await this.follow();
	}

	async follow(): Promise<void> {
		const { workbook } = this.session;
		const { mapping, sheet } = this;
		const asked = ++this.#asked;
		if (!workbook || !mapping || !this.#client) return;
		try {
			const { read, digest } = await this.#client.points(workbook, {
				sheet,
				mapping,
				fit: this.#fit
			});
			if (asked !== this.#asked) return;
			this.read = read;
			this.#digest = digest;
		} catch (error) {
			this.problem = error instanceof Error ? error.message : String(error);
		}
	}

	/** Keeps the points as one step; a sentence where that cannot be done. */
	add(calibration: Calibration): string | null {
		if (!this.read?.ok) return this.read?.message ?? '';
		const source = this.source.trim();
		if (!source) return texts.sayWhere;
		const data = [...(calibration.data ?? []), { source, points: [...this.read.points] }];
		return this.session.apply({
			kind: 'put_calibration',
			name: calibration.name,
			calibration: { ...calibration, data }
		});
	}

	stop(): void {
		this.#client?.stop();
		this.#client = null;
	}
}
