/**
 * One cell of a table as a value of its quantity, in the quantity's own unit, or why it cannot be one. A unit in the
 * cell goes before the row's, that before the column's.
 */
import type { QuantityLayout, Layout } from '$lib/engine/layout';
import { withUnit } from '$lib/engine/naming';
import { rangeText } from '$lib/engine/number-words';
import { UnitSystem } from '$lib/units/system';
import { isPermitted } from '$lib/workbook/range';
import type { Quantity, Scalar } from '$lib/workbook/schema';
import { readUnit, type UnitRead } from './column-unit';
import { noDate, readTableDate } from './dates';
import type { Cell } from './grid';
import type { Column } from './mapping';
import { readDuration } from './duration';
import { quoted, readNumber } from './number-text';
import { memberNamed } from './member-named';

export type CellRead =
	{ readonly ok: true; readonly value: Scalar } | { readonly ok: false; readonly message: string };

const refused = (message: string): CellRead => ({ ok: false, message });

const YES = new Set(['yes', 'y', 'true', '1', 'on']);
const NO = new Set(['no', 'n', 'false', '0', 'off']);

export class CellReader {
	readonly #units: UnitSystem;
	readonly #read = new Map<string, UnitRead>();

	constructor(readonly layout: Layout) {
		this.#units = UnitSystem.create(layout.workbook.units ?? []).system;
	}

	read(
		cell: Cell,
		{ quantity }: QuantityLayout,
		column: Pick<Column, 'unit' | 'decimal' | 'dayFirst'>,
		rowUnit: string
	): CellRead {
		const text = String(cell);
		if (quantity.type === 'yes_no') return readYesNo(text);
		if (typeof quantity.type === 'object') return this.#readMember(text, quantity.type.member_of);
		const date =
			quantity.shown === 'date' && typeof cell === 'string'
				? readTableDate(cell, column.dayFirst)
				: null;
		if (date) return date.ok ? permitted(date.date, quantity) : date;
		const number =
			typeof cell === 'number'
				? { ok: true as const, value: cell, unit: '' }
				: ((quantity.shown === undefined ? readDuration(cell, rowUnit || column.unit) : null) ??
					readNumber(cell, column.decimal));
		const isDate = quantity.shown === 'date';
		// "5-Mai-2027" is meant as a date, not as a number with a unit.
		if (!number.ok) return isDate ? noDate(text) : number;
		// A column of currencies says less than the heading beside it.
		const around = rowUnit && !isMoneyOf(rowUnit, column.unit) ? rowUnit : column.unit;
		const unit = number.unit === '' || isMoneyOf(number.unit, around) ? around : number.unit;
		const read = this.unit(unit, quantity);
		if (!read.ok) return isDate && number.unit !== '' ? noDate(text) : refused(read.message);
		return permitted(read.toOwn(number.value), quantity);
	}

	unit(written: string, { unit: own = '1' }: Quantity): UnitRead {
		const key = `${own}\n${written}`;
		let read = this.#read.get(key);
		if (!read) this.#read.set(key, (read = readUnit(written, own, this.#units)));
		return read;
	}

	#readMember(text: string, setName: string): CellRead {
		const set = this.layout.sets.get(setName);
		const id = set ? memberNamed(set, text) : null;
		if (id !== null) return { ok: true, value: id };
		const some = set?.members.slice(0, 4).map((member) => member.id) ?? [];
		return refused(
			`${quoted(text)} is not one of the choices. Take ${some.join(', ')}${(set?.members.length ?? 0) > 4 ? ' …' : ''}.`
		);
	}
}

/** "26,90 €" in a column of EUR/100 m: the cell says the money, the column by what. */
const isMoneyOf = (unit: string, around: string): boolean => {
	const money = unit === '€' ? 'EUR' : unit === '£' ? 'GBP' : unit;
	return around.replace('€', 'EUR').replace('£', 'GBP').startsWith(`${money}/`);
};

function readYesNo(text: string): CellRead {
	const word = text.toLowerCase();
	if (YES.has(word)) return { ok: true, value: true };
	if (NO.has(word)) return { ok: true, value: false };
	return refused(`${quoted(text)} is neither yes nor no. Write yes or no.`);
}

function permitted(value: number, quantity: Quantity): CellRead {
	const outside = outsidePermitted(value, quantity, 'Look at its digits and its unit.');
	return outside === null ? { ok: true, value } : refused(outside);
}

/** Why a value may not be entered; null where it may. */
export function outsidePermitted(
	value: number,
	{ range, unit = '1' }: Quantity,
	remedy: string
): string | null {
	if (isPermitted(value, range ?? null)) return null;
	const own = unit === '1' ? '' : unit;
	return `${withUnit(value, own)} is outside what is permitted: ${rangeText(range!, own)}. ${remedy}`;
}
