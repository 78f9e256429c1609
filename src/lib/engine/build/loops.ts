/**
 * Loops in words. They are judged on cells, so that a balance carried from month to month is none, and
 * reported on quantities: each loop once, with one member as example and what needs what in order.
 */
import { visit } from '$lib/formula/walk';
import type { Span } from '$lib/formula/tree';
import { membersOf, type Layout } from '../layout';
import type { Edges, PlanProblem } from '../plan';
import type { ProvenPart, ProvenQuantity } from './absence';
import { partOfCell } from './rules';
import type { Typed } from './types';

/** Names shown of a long loop. */
const SHOWN = 12;

export interface LoopSource {
	readonly layout: Layout;
	readonly proven: readonly ProvenQuantity[];
	readonly precedents: Edges;
	/** Quantity index of any cell, lifted ones too. */
	readonly quantityOf: (cell: number) => number;
}

export function loopProblems(
	source: LoopSource,
	loops: readonly (readonly number[])[]
): PlanProblem[] {
	const reported = new Set<string>();
	const problems: PlanProblem[] = [];
	for (const loop of [...loops].sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0))) {
		const quantities = [...new Set(loop.map((cell) => source.quantityOf(cell)))].sort(
			(a, b) => a - b
		);
		const key = quantities.join();
		if (reported.has(key)) continue;
		reported.add(key);
		problems.push(describe(source, loop, quantities));
	}
	return problems;
}

function describe(
	source: LoopSource,
	loop: readonly number[],
	quantities: readonly number[]
): PlanProblem {
	const { layout, proven } = source;
	const start = loop.find((cell) => cell < layout.cells) ?? loop[0] ?? 0;
	const path = shortestLoop(source.precedents, new Set(loop), start);
	const own = proven[source.quantityOf(start)];
	const name = own?.known.layout.quantity.name ?? '';
	const partIndex = own ? partOfCell(own.known.rules, own.known.layout, start) : -1;
	const part = own?.parts[partIndex];
	const choice =
		quantities.length === 1 && part ? movingChoiceInto(part.typed, own.known.layout.index) : null;
	const next = path.find((cell) => source.quantityOf(cell) !== source.quantityOf(start));
	const nextName = next === undefined ? name : nameOf(source, next);
	return {
		quantity: name,
		part: part?.proof.part ?? null,
		code: 'circular',
		message: choice
			? `${name} reads itself by a choice, and ${choice} may point at itself: mark ${choice} as fixed, or take the value from a quantity that does not need ${name}.`
			: `${loopWords(source, path)}: each needs the next, so none can be computed first. Take one of them from an input, or from the period before.`,
		span: (part && spanOf(part, nextName)) ?? { start: 0, end: part?.proof.text.length ?? 0 }
	};
}

/** From a cell over what it needs back to itself, by the fewest steps. */
function shortestLoop(edges: Edges, loop: ReadonlySet<number>, start: number): number[] {
	const cameFrom = new Map<number, number>();
	let front = [start];
	while (front.length > 0) {
		const beyond: number[] = [];
		for (const cell of front)
			for (let at = edges.starts[cell] ?? 0; at < (edges.starts[cell + 1] ?? 0); at++) {
				const needed = edges.targets[at] ?? 0;
				if (needed === start) return pathTo(cameFrom, cell, start);
				if (!loop.has(needed) || cameFrom.has(needed)) continue;
				cameFrom.set(needed, cell);
				beyond.push(needed);
			}
		front = beyond;
	}
	return [start];
}

function pathTo(cameFrom: ReadonlyMap<number, number>, end: number, start: number): number[] {
	const path: number[] = [];
	for (let cell = end; cell !== start; cell = cameFrom.get(cell) ?? start) path.push(cell);
	return [start, ...path.reverse()];
}

/** "margin of PX15B ← price ← margin". */
function loopWords(source: LoopSource, path: readonly number[]): string {
	const { layout } = source;
	const first = path[0] ?? 0;
	const members = (cell: number) => (cell < layout.cells ? membersOf(layout, cell).join(', ') : '');
	const same = members(first);
	const words: string[] = [];
	for (const cell of [...path, first]) {
		if (cell >= layout.cells && words.length > 0) continue;
		const there = members(cell);
		const shown = words.length === 0 || (there !== same && there !== '') ? there : '';
		const word = nameOf(source, cell) + (shown === '' ? '' : ` of ${shown}`);
		if (words.at(-1) !== word || path.length === 1) words.push(word);
	}
	if (words.length <= SHOWN) return words.join(' ← ');
	return [...words.slice(0, SHOWN - 1), '…', words.at(-1)].join(' ← ');
}

function nameOf({ proven, quantityOf }: LoopSource, cell: number): string {
	return proven[quantityOf(cell)]?.known.layout.quantity.name ?? '';
}

function spanOf({ proof, expression }: ProvenPart, name: string): Span | null {
	let span: Span | null = null;
	if (expression)
		visit(expression, (node) => {
			if (node.kind === 'reference' && node.name === name) span ??= node.span;
		});
	return span ?? (proof.text === '' ? null : { start: 0, end: proof.text.length });
}

/** The words of a choice by which a formula reads the quantity itself, or null. */
function movingChoiceInto(typed: Typed, quantity: number): string | null {
	switch (typed.kind) {
		case 'read': {
			for (const index of typed.indices) {
				if (index.kind !== 'choice') continue;
				if (typed.quantity.index === quantity && !index.of.fixed) return choiceWords(index.of);
				const inside = movingChoiceInto(index.of, quantity);
				if (inside) return inside;
			}
			return typed.otherwise && movingChoiceInto(typed.otherwise, quantity);
		}
		case 'unary':
		case 'conversion':
		case 'member-number':
			return movingChoiceInto(typed.of, quantity);
		case 'binary':
			return movingChoiceInto(typed.left, quantity) ?? movingChoiceInto(typed.right, quantity);
		case 'list':
			return firstOf(typed.items, quantity);
		case 'aggregate':
			return firstOf(
				[
					...typed.terms.flatMap((one) => [one.value, ...(one.where ? [one.where] : [])]),
					...typed.parameters
				],
				quantity
			);
		default:
			return null;
	}
}

function firstOf(items: readonly Typed[], quantity: number): string | null {
	for (const item of items) {
		const found = movingChoiceInto(item, quantity);
		if (found) return found;
	}
	return null;
}

function choiceWords(choice: Typed): string {
	return choice.source?.kind === 'reference' ? choice.source.name : 'the choice';
}
