/**
 * Guesses what the author meant where a token does not belong, and says how it is written here.
 */
import { findFunction } from './functions';
import { RESERVED } from './names';
import { clip, problem } from './problems';
import type { TokenReader } from './reader';
import { reserved } from './reserved';
import type { Token } from './token';
import type { FormulaProblem, Span } from './tree';

const CLAUSES: ReadonlySet<string> = new Set(['over', 'where', 'in', 'else']);
const CONNECTIVES: ReadonlySet<string> = new Set(['AND', 'OR']);

/** What to say about the token in hand; `inside` names the function whose arguments are being read. */
export function explainUnexpected(reader: TokenReader, inside?: string): FormulaProblem {
	const { token, previous } = reader;
	if (token.kind === 'mark') return explainMark(reader, token.text, token.span, inside);
	if (token.kind === 'end') return explainEnd(reader);
	if (token.kind === 'name' && CLAUSES.has(token.text)) return misplaced(token, inside);
	if (previous !== undefined && endsOperand(previous)) return twoOperands(reader, previous, token);
	if (token.kind === 'name' && RESERVED.has(token.text)) return reserved(token.text, token.span);
	return problem('missing-operand', token.span, 'Write a number, a name or a bracket here.');
}

function endsOperand(token: Token): boolean {
	if (token.kind === 'mark') return [')', ']', '%'].includes(token.text);
	return token.kind !== 'name' || !CLAUSES.has(token.text);
}

function explainEnd(reader: TokenReader): FormulaProblem {
	const { previous } = reader;
	if (previous === undefined || (reader.isStart && previous.text === '=')) {
		const span = { start: 0, end: reader.text.length };
		return problem(
			'empty-formula',
			span,
			'This formula is empty: write a number, a name or a sum.'
		);
	}
	const what = clip(previous.text);
	const message = `The formula stops after ${what}: a number, a name or a bracket is missing.`;
	return problem('missing-operand', previous.span, message);
}

function explainMark(
	reader: TokenReader,
	mark: string,
	span: Span,
	inside?: string
): FormulaProblem {
	const { previous } = reader;
	const afterOperand = previous !== undefined && endsOperand(previous);
	if (mark === ',') {
		const message = 'Arguments are separated by ; here, and numbers take a decimal point.';
		return problem('comma-separator', span, message, ';');
	}
	if (mark === ';') {
		if (inside !== undefined) {
			const message = `An argument of ${inside} is missing before this ;. Write it, or take the ; out.`;
			return problem('missing-argument', span, message);
		}
		const message = afterOperand
			? 'A ; separates the arguments of a function or the members of x[a; b]; neither is open here.'
			: 'Something is missing before this ;.';
		return problem('stray-separator', span, message);
	}
	if (mark === '[') return strayBrackets(reader, span);
	if (mark === '(' && afterOperand) return twoOperands(reader, previous, reader.token);
	if (mark === ')' || mark === ']') {
		if (afterOperand || previous === undefined)
			return problem('unopened-bracket', span, `No bracket is open for this ${mark}: take it out.`);
		const message = `A number, a name or a bracket is missing between ${clip(previous.text)} and ${mark}.`;
		return problem('missing-operand', between(previous.span, span), message);
	}
	if (mark === '.') {
		const message =
			'A point stands between a set and its member, as in stage.line, and nowhere else.';
		return problem('bad-member', span, message);
	}
	if (afterOperand) return problem('missing-operator', span, `${mark} does not belong here.`);
	if (previous === undefined)
		return problem('missing-operand', span, `Something is missing before ${mark}.`);
	const message = `A number, a name or a bracket is missing between ${clip(previous.text)} and ${mark}.`;
	return problem('missing-operand', between(previous.span, span), message);
}

/** Square brackets after something that is neither a number nor a name. */
function strayBrackets(reader: TokenReader, span: Span): FormulaProblem {
	const { previous, next } = reader;
	if (previous?.kind === 'number' && previous.unit === null) {
		const inside = /^[^[\]]*\]/.exec(reader.text.slice(span.end))?.[0];
		const unit = inside?.slice(0, -1).trim() ?? '';
		const better = `${previous.text}[${unit === '' ? 'h' : clip(unit)}]`;
		const whole = { start: previous.span.start, end: span.end + (inside?.length ?? 0) };
		const message = `A unit follows its number without a space: ${better}.`;
		return problem('unit-brackets', whole, message, unit === '' ? undefined : better);
	}
	if (next.kind === 'name' && (next.text === 'base' || next.text === 'reference')) {
		const message = `[${next.text}] follows one name: write a[${next.text}] - b[${next.text}], not (a - b)[${next.text}].`;
		return problem('unit-brackets', span, message);
	}
	if (previous?.kind === 'mark' && previous.text === ']') {
		const message =
			'One pair of square brackets is enough: two members stand in it with ; between, x[a; b].';
		return problem('unit-brackets', span, message);
	}
	const message =
		'Square brackets follow a number (its unit, 5[kg]) or a name (its member, price[steel]). To give a unit to a plain number, multiply: (…) * 1[kg].';
	return problem('unit-brackets', span, message);
}

function misplaced(token: Token, inside?: string): FormulaProblem {
	const word = token.text;
	if (inside !== undefined) {
		const other = inside === 'AND' ? 'ALL' : inside === 'OR' ? 'ANY' : null;
		const message =
			other === null
				? `${inside} gathers nothing, so ${word} does not belong here. It belongs inside an aggregate: ${example(word)}.`
				: `${inside} takes conditions one by one. For all members of a set write ${other}(condition over set).`;
		return problem('misplaced-word', token.span, message);
	}
	const message = `${word} does not belong here. It belongs inside an aggregate: ${example(word)}.`;
	return problem('misplaced-word', token.span, message);
}

function example(word: string): string {
	if (word === 'where') return 'SUM(x over set where condition)';
	if (word === 'in') return 'SUM(x[i] over i in set)';
	if (word === 'else') return 'MIN(x over set else 0), or in square brackets: x[month - 1 else 0]';
	return 'SUM(x over set)';
}

/** Two operands side by side: the commonest reasons, likeliest first. */
function twoOperands(reader: TokenReader, previous: Token, token: Token): FormulaProblem {
	const word = token.kind === 'name' ? token.text : '';
	if (CONNECTIVES.has(word.toUpperCase())) {
		const name = word.toUpperCase();
		const message = `${name} stands before its conditions: ${name}(a; b).`;
		return problem('missing-operator', token.span, message);
	}
	if (CLAUSES.has(word.toLowerCase())) {
		const small = word.toLowerCase();
		return problem('missing-operator', token.span, `${small} is written in small letters.`, small);
	}
	const connective = previous.kind === 'name' ? previous.text.toUpperCase() : '';
	if (connective === 'NOT' && token.kind !== 'mark') {
		const message = 'NOT takes its condition in brackets: NOT(a).';
		return problem('missing-operator', previous.span, message);
	}
	const span = between(previous.span, token.span);
	if (previous.kind === 'mark' && previous.text === '%') {
		const message =
			'An operator is missing after %, which makes hundredths of what stands before it. For a remainder write MOD(a; b).';
		return problem('missing-operator', span, message);
	}
	if (previous.kind === 'number' && previous.unit === null && token.kind === 'name')
		return unitWithoutBrackets(reader, previous, token);
	if (token.kind === 'name' && previous.kind === 'name' && findFunction(previous.text)) {
		const message = `${previous.text} takes its arguments in brackets: ${findFunction(previous.text)!.signature}.`;
		return problem('missing-operator', span, message);
	}
	if (previous.kind === 'number' && token.kind === 'number' && /^[0-9]{3}(\.|$)/.test(token.text)) {
		const joined = previous.text + token.text;
		const message = `A number has no space in it: write ${clip(joined)}, or an operator between ${clip(previous.text)} and ${clip(token.text)}.`;
		return problem('bad-number', span, message);
	}
	const left = clip(reader.text.slice(previous.span.start, previous.span.end), 24);
	const right = clip(reader.text.slice(token.span.start, token.span.end), 24);
	if (token.kind === 'name' && previous.kind === 'name') {
		const joined = clip(`${left}_${right}`);
		const message = `An operator is missing between ${left} and ${right}. If they are one name, it has no space: ${joined}.`;
		return problem('missing-operator', span, message);
	}
	const message = `An operator is missing between ${left} and ${right}.`;
	return problem('missing-operator', span, message);
}

/** `5 kg`, `5kg`, `5x24`. */
function unitWithoutBrackets(reader: TokenReader, number: Token, token: Token): FormulaProblem {
	const tail = reader.text.slice(token.span.start);
	const unit = /^\p{L}[\p{L}\p{N}]*(?:[/*^·][\p{L}\p{N}]+)*/u.exec(tail)?.[0] ?? token.text;
	const span = { start: number.span.start, end: token.span.start + unit.length };
	const better = `${number.text}[${unit}]`;
	const asMember = number.span.end === token.span.start && /[0-9]/.test(token.text);
	const otherwise = asMember
		? `; a member is quoted: '${clip(number.text + token.text)}'.`
		: `; a quantity is multiplied: ${clip(number.text)} * ${clip(token.text)}.`;
	const message = `A unit follows its number in brackets: ${clip(better)}${otherwise}`;
	return problem('unit-brackets', span, message, asMember ? undefined : better);
}

function between(left: Span, right: Span): Span {
	return { start: left.start, end: right.end };
}
