/**
 * A value's reasons made ready for the panel: figures in words, what changed, the lines of the formula.
 */
import type { Layout } from '$lib/engine/layout';
import type { Feed, FormulaPiece, Outcome, Place, Why } from '$lib/engine/results';
import { isError, OK } from '$lib/engine/state';
import { isClose } from '../cells';
import {
	formatDifference,
	formatNumber,
	formatUnit,
	unitShown,
	decimalsFor,
	decimalsWritten
} from '../format';
import { figureText } from '../show';

export interface Line {
	readonly text: string;
	readonly changed: boolean;
	readonly bad: boolean;
}

const NOTHING: Readonly<Record<number, string>> = {
	1: 'n/a',
	2: 'not entered',
	3: 'outside the table',
	4: 'none'
};

const differs = (outcome: Outcome, other: Outcome) =>
	outcome.state !== other.state || (outcome.state === OK && !isClose(outcome.value, other.value));

/** An outcome of a quantity in words, with its unit if asked. */
export function outcomeText(
	layout: Layout,
	name: string,
	outcome: Outcome,
	locale: string,
	withUnit = true
): string {
	if (isError(outcome.state)) return 'No value';
	if (outcome.state !== OK) return NOTHING[outcome.state] ?? 'nothing';
	const quantity = layout.byName.get(name);
	if (!quantity) return plainNumber(outcome.value, locale);
	const unit = withUnit ? unitShown(quantity.quantity) : '';
	const text = figureText(layout, quantity, outcome.value, locale);
	return unit ? `${text} ${unit}` : text;
}

const plainNumber = (value: number, locale: string) =>
	formatNumber(value, Math.min(decimalsFor(value, 4), decimalsWritten(value, 9)), locale);

/** "Minimum wall" with the members that differ from those of the value in question. */
export function placeLabel(layout: Layout, place: Place, beside: readonly string[]): string {
	const label = layout.byName.get(place.quantity)?.quantity.label || place.quantity;
	const own = place.members.filter((member) => !beside.includes(member));
	return own.length > 0 ? `${label}, ${own.join(', ')}` : label;
}

export interface FeedLine {
	readonly place: Place;
	readonly label: string;
	readonly value: string;
	readonly difference: string;
	readonly changed: boolean;
	readonly bad: boolean;
}

export function feedLine(layout: Layout, feed: Feed, beside: readonly string[], locale: string) {
	const changed = differs(feed.here, feed.reference);
	const both = feed.here.state === OK && feed.reference.state === OK;
	const quantity = layout.byName.get(feed.quantity)?.quantity;
	const number = quantity?.type === undefined || quantity.type === 'number';
	const change = feed.here.value - feed.reference.value;
	return {
		place: feed,
		label: placeLabel(layout, feed, beside),
		value: outcomeText(layout, feed.quantity, feed.here, locale),
		difference:
			changed && both && number
				? formatDifference(change, decimalsFor(feed.here.value, quantity?.digits ?? 4), locale)
				: '',
		changed,
		bad: isError(feed.here.state)
	} satisfies FeedLine;
}

export interface PieceLines {
	readonly role: FormulaPiece['role'];
	readonly name: string;
	readonly here: string;
	readonly reference: string;
	readonly changed: boolean;
	readonly bad: boolean;
	readonly quantity: string | undefined;
}

/** One piece of the formula on its three lines: in names, here, in the reference. */
export function pieceLines(layout: Layout, piece: FormulaPiece, locale: string): PieceLines {
	const about = { role: piece.role, name: piece.text, quantity: piece.quantity };
	if (!piece.here) {
		const repeated = piece.role === 'words' || piece.isGathered ? '' : piece.text;
		return { ...about, here: repeated, reference: repeated, changed: false, bad: false };
	}
	const show = (outcome: Outcome) => {
		if (piece.quantity !== undefined) return outcomeText(layout, piece.quantity, outcome, locale);
		if (isError(outcome.state)) return 'No value';
		if (outcome.state !== OK) return NOTHING[outcome.state] ?? 'nothing';
		return [plainNumber(outcome.value, locale), formatUnit(piece.unit)].filter(Boolean).join(' ');
	};
	const changed = piece.reference !== undefined && differs(piece.here, piece.reference);
	return {
		...about,
		here: show(piece.here),
		reference: piece.reference === undefined ? '' : changed ? show(piece.reference) : 'same',
		changed,
		bad: isError(piece.here.state)
	};
}

/** Names with the operator before each, for a narrow screen. */
export function columnSum(pieces: readonly PieceLines[]) {
	const rows: { sign: string; piece: PieceLines }[] = [];
	let sign = '';
	for (const piece of pieces) {
		if (piece.role === 'operator' && '+−-×*/^'.includes(piece.name.trim())) sign = piece.name;
		if (piece.here !== '' && piece.here !== piece.name) {
			rows.push({ sign, piece });
			sign = '';
		}
	}
	return rows;
}

/** "wall set-point, PX15B, Better gauging". */
export function whyTitle(layout: Layout, why: Why, scenario: string): string {
	const label = layout.byName.get(why.quantity)?.quantity.label ?? why.quantity;
	return [label, ...why.members, scenario].join(', ');
}

export interface Curve {
	readonly path: string;
	readonly y: number;
}

/** Curves from lines of text, one below the other, to the middle; `side` is where the texts stand. */
export function curves(
	count: number,
	rowHeight: number,
	height: number,
	width: number,
	side: 'left' | 'right'
): Curve[] {
	const middle = height / 2;
	const first = middle - ((count - 1) * rowHeight) / 2;
	return Array.from({ length: count }, (_, i) => {
		const y = first + i * rowHeight;
		const [from, to] = side === 'left' ? [0, width] : [width, 0];
		const bend = side === 'left' ? width * 0.55 : width * 0.45;
		return { y, path: `M${from} ${y}C${bend} ${y} ${bend} ${middle} ${to} ${middle}` };
	});
}
