/**
 * Reads one reference: `price`, `stage.line`, `'5x24'`, `stock[month - 1 else opening]`, `ebit[reference; y3]`.
 */
import { RESERVED } from './names';
import { clip } from './problems';
import { TokenReader } from './reader';
import type { Token } from './token';
import type { Expression, Index, Reference } from './tree';
import { reserved } from './reserved';

type NameToken = Extract<Token, { readonly kind: 'name' | 'quoted' }>;

/** A neighbour may be this many places away. */
const FARTHEST = 1000;

/** The reference that begins with the name in hand. */
export function readReference(reader: TokenReader, first: NameToken): Reference | null {
	const { start } = reader;
	if (isReserved(first)) return refuseWord(reader, first);
	reader.take();
	const member = reader.isMark('.') ? readMember(reader, first) : null;
	if (reader.problem !== null) return null;
	const name = member ?? first;
	const read = reader.isMark('[') ? readIndices(reader) : { indices: [], otherwise: null };
	if (read === null) return null;
	const node: Reference = {
		kind: 'reference',
		qualifier: member === null ? null : first.text,
		name: name.text,
		quoted: name.kind === 'quoted',
		indices: read.indices,
		otherwise: read.otherwise,
		span: reader.spanFrom(start),
		nameSpan: name.span
	};
	const inside = read.indices.map((index) => (index.kind === 'member' ? index.value : null));
	return reader.built(node, [...inside, read.otherwise]);
}

/** The member after `set.` */
function readMember(reader: TokenReader, set: NameToken): NameToken | null {
	const point = reader.take();
	const { token } = reader;
	if (set.kind === 'quoted') {
		const message = `A set stands without quotes before its member: ${clip(set.text)}.member.`;
		return reader.fail('bad-member', set.span, message);
	}
	if (token.kind === 'bad') return reader.unexpected();
	if (token.kind !== 'name' && token.kind !== 'quoted') {
		const written = /^[\p{L}\p{N}_]+/u.exec(reader.text.slice(point.span.end))?.[0] ?? '5x24';
		const message = `After ${clip(set.text)}. comes one of its members; one that does not begin with a letter stands in quotes: ${clip(set.text)}.'${clip(written)}'.`;
		return reader.fail('bad-member', { start: set.span.start, end: token.span.end }, message);
	}
	if (isReserved(token)) return refuseWord(reader, token);
	reader.take();
	return token;
}

function readIndices(
	reader: TokenReader
): { readonly indices: readonly Index[]; readonly otherwise: Expression | null } | null {
	const open = reader.token;
	if (!reader.enter(open.span)) return null;
	reader.take();
	const indices: Index[] = [];
	do {
		const index = readIndex(reader, open);
		if (index === null) return null;
		indices.push(index);
	} while (reader.takeMark(';'));

	let otherwise: Expression | null = null;
	if (reader.isWord('else')) {
		reader.take();
		otherwise = reader.expression();
		if (otherwise === null) return null;
	}
	if (reader.isMark(',')) return refuseComma(reader);
	if (!reader.close(open, ']')) return null;
	reader.leave();
	const scenarios = indices.filter(({ kind }) => kind === 'scenario');
	if (scenarios.length > 1) {
		const message = 'A value is taken from one scenario: write base or reference, not two of them.';
		return reader.fail('bad-index', scenarios[1]!.span, message);
	}
	return { indices, otherwise };
}

function readIndex(reader: TokenReader, open: Token): Index | null {
	const { start, token, next } = reader;
	if (reader.isMark(']', ';') || reader.isWord('else')) {
		const message =
			'A member is missing in the square brackets: write one (L2), a choice (pattern_of_line) or a neighbour (month - 1).';
		return reader.fail('bad-index', { start: open.span.start, end: token.span.end }, message);
	}
	if (token.kind === 'name' && (token.text === 'base' || token.text === 'reference')) {
		reader.take();
		return { kind: 'scenario', which: token.text, span: token.span };
	}
	if (token.kind === 'name' && next.kind === 'mark' && (next.text === '+' || next.text === '-'))
		return readNeighbour(reader, token);
	const value = reader.expression();
	if (value === null) return null;
	const span = reader.spanFrom(start);
	if (value.kind === 'reference' || value.kind === 'call') return { kind: 'member', value, span };
	const words = clip(reader.wordsFrom(start));
	const message =
		value.kind === 'number'
			? `Members are chosen by name, not by place: a member called ${words} stands in quotes, '${words}'.`
			: `${words} is no member: write one (L2), a choice (pattern_of_line) or a neighbour (month - 1).`;
	return reader.fail('bad-index', span, message);
}

/** `month - 1`: a set, a sign and a whole number, nothing more. */
function readNeighbour(reader: TokenReader, axis: Token): Index | null {
	const { start } = reader;
	if (isReserved(axis)) return refuseWord(reader, axis);
	reader.take();
	const sign = reader.take().text === '-' ? -1 : 1;
	const places = reader.token;
	if (places.kind === 'bad') return reader.unexpected();
	const steps = places.kind === 'number' && places.unit === null ? places.value : Number.NaN;
	const plain = /^[0-9]+$/.test(places.text);
	if (places.kind === 'number') reader.take();
	const ends = reader.isMark(']', ';', ',') || reader.isWord('else') || reader.token.kind === 'end';
	if (plain && ends && steps >= 1 && steps <= FARTHEST)
		return {
			kind: 'neighbour',
			axis: axis.text,
			offset: sign * steps,
			span: reader.spanFrom(start)
		};
	if (reader.token.kind === 'bad') return reader.unexpected();
	const words = clip(reader.wordsFrom(start));
	const span = reader.spanFrom(start);
	if (steps === 0) {
		const message = `${words} is ${clip(axis.text)} itself: leave the number out, or write ${clip(axis.text)} - 1 for its neighbour.`;
		return reader.fail('bad-index', span, message, axis.text);
	}
	const message =
		steps > FARTHEST && plain
			? `${words} is too far: a neighbour is at most ${FARTHEST} places away.`
			: `A neighbour is a set, a sign and a whole number, as in ${clip(axis.text)} - 1, and nothing more.`;
	return reader.fail('bad-index', span, message);
}

function refuseComma(reader: TokenReader): null {
	const message = 'Members are separated by ; here: x[a; b].';
	return reader.fail('comma-separator', reader.token.span, message, ';');
}

function isReserved(token: Token): boolean {
	return token.kind === 'name' && RESERVED.has(token.text);
}

function refuseWord(reader: TokenReader, { text, span }: Token): null {
	const found = reserved(text, span);
	return reader.fail('reserved-word', span, found.message);
}
