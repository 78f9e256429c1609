/**
 * Writes a tree as text: one canonical spelling, brackets only where the reading needs them. What is
 * printed is read back as the same tree.
 *
 * The same pieces, each with the node it stands for, let a screen put numbers in the place of names.
 */
import { isName, RESERVED } from './names';
import type { Argument, Binary, Call, Expression, Index, Reference } from './tree';

export type PieceRole = 'name' | 'number' | 'operator' | 'bracket' | 'function' | 'words';

/** A stretch of a printed formula. Put together, the texts of all pieces are the formula. */
export interface Piece {
	readonly text: string;
	/** "bracket" includes the ; between arguments; "words" are over, where, in, else, base, reference. */
	readonly role: PieceRole;
	/**
	 * The node that the piece is a part of. A reference with square brackets begins with its name and ends
	 * with the ] of the same node. Null for the sets and index names after `over`.
	 */
	readonly node: Expression | null;
	/** On the name of a function: the call, whose terms a screen may unfold. */
	readonly opens?: Call;
}

/** The canonical text of a formula. */
export function printFormula(expression: Expression): string {
	return pieces(expression)
		.map(({ text }) => text)
		.join('');
}

/** The canonical text in pieces, in order. */
export function pieces(expression: Expression): readonly Piece[] {
	const written: Piece[] = [];
	write(expression, COMPARISON, written);
	return written;
}

/** How tightly a node binds; an operand that binds less than its place asks for goes in brackets. */
const COMPARISON = 1;
const SUM = 2;
const PRODUCT = 3;
const POWER = 4;
const SIGN = 5;
const PERCENT = 6;
const PRIMARY = 7;

function strength(expression: Expression): number {
	if (expression.kind === 'negation') return SIGN;
	if (expression.kind === 'percent') return PERCENT;
	if (expression.kind !== 'binary') return PRIMARY;
	const { operator } = expression;
	if (operator === '+' || operator === '-') return SUM;
	if (operator === '*' || operator === '/') return PRODUCT;
	return operator === '^' ? POWER : COMPARISON;
}

function write(expression: Expression, atLeast: number, to: Piece[]): void {
	if (strength(expression) < atLeast) {
		to.push({ text: '(', role: 'bracket', node: expression });
		writeNode(expression, to);
		to.push({ text: ')', role: 'bracket', node: expression });
	} else writeNode(expression, to);
}

function writeNode(expression: Expression, to: Piece[]): void {
	switch (expression.kind) {
		case 'number': {
			const { text, unit } = expression;
			to.push({
				text: unit === null ? text : `${text}[${unit}]`,
				role: 'number',
				node: expression
			});
			return;
		}
		case 'negation':
			to.push({ text: '-', role: 'operator', node: expression });
			write(expression.of, SIGN, to);
			return;
		case 'percent':
			write(expression.of, PERCENT, to);
			to.push({ text: '%', role: 'operator', node: expression });
			return;
		case 'binary':
			writeBinary(expression, to);
			return;
		case 'reference':
			writeReference(expression, to);
			return;
		case 'call':
			writeCall(expression, to);
	}
}

function writeBinary(expression: Binary, to: Piece[]): void {
	const { operator, left, right } = expression;
	const own = strength(expression);
	const chains = own === SUM || own === PRODUCT;
	// A power takes a signed exponent (2^-1) but no signed base; a comparison does not chain.
	const leftNeeds = own === POWER ? PERCENT : chains ? own : own + 1;
	write(left, leftNeeds, to);
	const text = operator === '^' ? '^' : ` ${operator} `;
	to.push({ text, role: 'operator', node: expression });
	write(right, own + 1, to);
}

function writeReference(expression: Reference, to: Piece[]): void {
	const { qualifier, name, quoted, indices, otherwise } = expression;
	const bare = !quoted && isName(name) && !RESERVED.has(name);
	const ownName = bare ? name : `'${name}'`;
	const text = qualifier === null ? ownName : `${qualifier}.${ownName}`;
	to.push({ text, role: 'name', node: expression });
	if (indices.length === 0 && otherwise === null) return;
	to.push({ text: '[', role: 'bracket', node: expression });
	indices.forEach((index, position) => {
		if (position > 0) to.push({ text: '; ', role: 'bracket', node: expression });
		writeIndex(index, expression, to);
	});
	if (otherwise !== null) {
		to.push({ text: ' else ', role: 'words', node: expression });
		write(otherwise, COMPARISON, to);
	}
	to.push({ text: ']', role: 'bracket', node: expression });
}

function writeIndex(index: Index, node: Reference, to: Piece[]): void {
	if (index.kind === 'scenario') to.push({ text: index.which, role: 'words', node });
	else if (index.kind === 'member') write(index.value, COMPARISON, to);
	else {
		const { axis, offset } = index;
		to.push({ text: axis, role: 'name', node });
		to.push({ text: offset < 0 ? ' - ' : ' + ', role: 'operator', node });
		to.push({ text: String(Math.abs(offset)), role: 'number', node });
	}
}

function writeCall(call: Call, to: Piece[]): void {
	to.push({ text: call.name, role: 'function', node: call, opens: call });
	to.push({ text: '(', role: 'bracket', node: call });
	call.args.forEach((argument, position) => {
		if (position > 0) to.push({ text: '; ', role: 'bracket', node: call });
		writeArgument(argument, call, to);
	});
	to.push({ text: ')', role: 'bracket', node: call });
}

function writeArgument({ value, over, where, otherwise }: Argument, call: Call, to: Piece[]) {
	write(value, COMPARISON, to);
	over.forEach(({ index, axis }, position) => {
		if (position === 0) to.push({ text: ' over ', role: 'words', node: call });
		else to.push({ text: ' × ', role: 'operator', node: call });
		if (index !== null) {
			to.push({ text: index, role: 'name', node: null });
			to.push({ text: ' in ', role: 'words', node: call });
		}
		to.push({ text: axis, role: 'name', node: null });
	});
	if (where !== null) {
		to.push({ text: ' where ', role: 'words', node: call });
		write(where, COMPARISON, to);
	}
	if (otherwise !== null) {
		to.push({ text: ' else ', role: 'words', node: call });
		write(otherwise, COMPARISON, to);
	}
}
