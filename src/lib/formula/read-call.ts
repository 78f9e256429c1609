/**
 * Reads one function call with its arguments: `SUM(x[l] over l in layer where l > layer else 0)`.
 */
import { argumentGathers, findFunction, type FunctionSpec } from './functions';
import { RESERVED } from './names';
import { clip } from './problems';
import { TokenReader } from './reader';
import type { Token } from './token';
import type { Argument, Binding, Call, Expression } from './tree';
import { adviseOnFunction } from './unknown-function';

/** The call of the function whose name is in hand and before its bracket. */
export function readCall(reader: TokenReader, name: Token): Call | null {
	const { start } = reader;
	const spec = findFunction(name.text);
	if (spec === undefined) return refuseFunction(reader, name);
	reader.take();
	const open = reader.token;
	if (!reader.enter(open.span)) return null;
	reader.take();
	const args: Argument[] = [];
	if (!reader.isMark(')')) {
		do {
			const argument = readArgument(reader, spec, args.length);
			if (argument === null) return null;
			args.push(argument);
		} while (reader.takeMark(';'));
	}
	if (!reader.close(open, ')', spec.name)) return null;
	reader.leave();
	const span = reader.spanFrom(start);
	const node: Call = { kind: 'call', name: spec.name, args, span, nameSpan: name.span };
	if (args.length < spec.minimum || args.length > spec.maximum)
		return refuseCount(reader, spec, node);
	const parts = args.flatMap(({ value, where, otherwise }) => [value, where, otherwise]);
	return reader.built(node, parts);
}

function refuseFunction(reader: TokenReader, { text, span }: Token): null {
	if (RESERVED.has(text)) {
		const message = `${text} is a word of the language, not a function.`;
		return reader.fail('reserved-word', span, message);
	}
	const { message, suggestion } = adviseOnFunction(text);
	const whole = `There is no function ${clip(text)}. ${message}`;
	return reader.fail('unknown-function', span, whole, suggestion);
}

function refuseCount(reader: TokenReader, spec: FunctionSpec, { args, span }: Call): null {
	const { minimum, maximum, name, signature } = spec;
	const plural = (count: number) => (count === 1 ? '1 argument' : `${count} arguments`);
	const allowed =
		minimum === maximum
			? minimum === 0
				? 'no arguments'
				: plural(minimum)
			: maximum === Number.POSITIVE_INFINITY
				? `at least ${plural(minimum)}`
				: `${minimum} or ${plural(maximum)}`;
	const found = args.length === 0 ? 'none' : String(args.length);
	const message = `${name} takes ${allowed}, not ${found}: ${signature}.`;
	return reader.fail('argument-count', span, message);
}

function readArgument(reader: TokenReader, spec: FunctionSpec, position: number): Argument | null {
	const { start } = reader;
	if (reader.isMark(';', ')')) {
		const message = `An argument of ${spec.name} is missing here: ${spec.signature}.`;
		return reader.fail('missing-argument', reader.token.span, message);
	}
	const value = reader.expression();
	if (value === null) return null;
	const gathers = argumentGathers(spec, position);
	if (!gathers && reader.isWord('over', 'where', 'else')) return refuseClause(reader, spec);

	const over = reader.isWord('over') ? readBindings(reader) : [];
	if (over === null) return null;
	let where: Expression | null = null;
	let otherwise: Expression | null = null;
	if (reader.isWord('where')) {
		reader.take();
		where = reader.expression();
		if (where === null) return null;
	}
	if (reader.isWord('else')) {
		reader.take();
		otherwise = reader.expression();
		if (otherwise === null) return null;
	}
	if (gathers && reader.isWord('over', 'where', 'else')) return refuseOrder(reader);
	return { value, over, where, otherwise, span: reader.spanFrom(start) };
}

function refuseClause(reader: TokenReader, spec: FunctionSpec): null {
	if (spec.kind === 'scalar') return reader.unexpected(spec.name);
	const word = reader.token.text;
	const message = `This argument of ${spec.name} gathers nothing, so ${word} does not belong here: ${spec.signature}.`;
	return reader.fail('misplaced-word', reader.token.span, message);
}

function refuseOrder(reader: TokenReader): null {
	const word = reader.token.text;
	const message = `This ${word} comes too late: an aggregate is written with each word once, in this order: SUM(x over set where condition else y).`;
	return reader.fail('misplaced-word', reader.token.span, message);
}

function readBindings(reader: TokenReader): Binding[] | null {
	const bindings: Binding[] = [];
	do {
		reader.take();
		const binding = readBinding(reader);
		if (binding === null) return null;
		bindings.push(binding);
	} while (reader.isMark('*'));
	const { token } = reader;
	const another = token.kind === 'name' && !RESERVED.has(token.text.toLowerCase());
	if (reader.isMark(',') || another) {
		const message =
			'Sets in a list after over are joined by ×, or * as you type: over product × line.';
		const joining = token.text === ',' || token.text.toLowerCase() === 'and';
		return reader.fail('bad-binding', token.span, message, joining ? ' × ' : undefined);
	}
	return bindings;
}

function readBinding(reader: TokenReader): Binding | null {
	const { start } = reader;
	const first = takeName(reader);
	if (first === null) return null;
	if (!reader.isWord('in')) return { index: null, axis: first, span: reader.spanFrom(start) };
	reader.take();
	const axis = takeName(reader);
	return axis === null ? null : { index: first, axis, span: reader.spanFrom(start) };
}

function takeName(reader: TokenReader): string | null {
	const { token, previous } = reader;
	if (token.kind === 'name' && !RESERVED.has(token.text)) return reader.take().text;
	if (token.kind === 'bad') return reader.unexpected();
	const message = `A set is missing after ${previous!.text === '*' ? '×' : previous!.text}: over layer, or over l in layer.`;
	const span = token.kind === 'end' ? previous!.span : token.span;
	return reader.fail('bad-binding', span, message);
}
