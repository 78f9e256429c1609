/** The open values of a workbook as lines to read: one for each value, its members named. */
import type { OpenQuantity } from '$lib/protocol/results';
import { formatInFull, formatUnit } from '../format';

export interface OpenLine {
	readonly label: string;
	/** "PX15B, line 1"; empty for a single value. */
	readonly at: string;
	readonly value: string;
}

const DIGITS = 5;

export function openLines(quantities: readonly OpenQuantity[], locale: string): OpenLine[] {
	return quantities.flatMap(({ name, label, unit, value, values }) => {
		const lines: OpenLine[] = [];
		const walk = (node: unknown, at: readonly string[]) => {
			if (typeof node === 'object' && node !== null && !isMissing(node)) {
				for (const [id, inner] of Object.entries(node)) walk(inner, [...at, id]);
				return;
			}
			lines.push({ label: label || name, at: at.join(', '), value: said(node, unit, locale) });
		};
		walk(value ?? values, []);
		return lines;
	});
}

/** A value that is not there: its kind stands in its place. */
const isMissing = (node: object): boolean =>
	['nothing', 'error'].some(
		(kind) =>
			Object.hasOwn(node, kind) && typeof (node as Record<string, unknown>)[kind] === 'string'
	);

function said(node: unknown, unit: string | undefined, locale: string): string {
	if (typeof node === 'number') {
		const rounded = Number(node.toPrecision(DIGITS));
		return [formatInFull(rounded, locale), formatUnit(unit)].filter(Boolean).join(' ');
	}
	if (typeof node === 'boolean') return node ? 'yes' : 'no';
	return typeof node === 'string' ? node : 'no value';
}
