/**
 * Loops in words. They are judged on cells, so that a balance carried from month to month is none, and
 * reported on quantities: each loop once, with one member as example and what needs what in order.
 */
import { visit } from '$lib/formula/walk';
import type { Span } from '$lib/formula/tree';
import { LOOP, type Edges, type PlanProblem } from '../plan';
import type { ProvenPart } from './absence';
import type { Context } from './context';
import { partsOf } from './gather';
import { partOfCell } from './rules';
import type { Typed } from './types';

/** Names shown of a long loop. */
const SHOWN = 12;

export interface LoopSource {
	readonly context: Context;
	readonly partsOf: (quantity: number) => readonly ProvenPart[];
	/** Who needs whom, in the numbers of the loops. */
	readonly precedents: Edges;
	/** Quantity index behind a number, that of a lifted cell too. */
	readonly quantityOf: (at: number) => number;
	/** The cell that a number stands for. */
	readonly cellOf: (at: number) => number;
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
	const start = loop.find((at) => membersOf(source, at) !== null) ?? loop[0] ?? 0;
	const path = shortestLoop(source.precedents, new Set(loop), start);
	const index = source.quantityOf(start);
	const known = source.context.at(index);
	const name = nameOf(source, start);
	const partIndex = known ? partOfCell(known.rules, known.layout, source.cellOf(start)) : -1;
	const part = source.partsOf(index)[partIndex];
	const choice = quantities.length === 1 && part ? movingChoiceInto(part.typed, index) : null;
	const next = path.find((at) => source.quantityOf(at) !== index);
	const nextName = next === undefined ? name : nameOf(source, next);
	return {
		quantity: name,
		part: part?.proof.part ?? null,
		code: LOOP,
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
	const first = path[0] ?? 0;
	const same = membersOf(source, first);
	const words: string[] = [];
	for (const at of [...path, first]) {
		const there = membersOf(source, at);
		if (there === null && words.length > 0) continue;
		const shown = words.length === 0 || there !== same ? there : '';
		const word = nameOf(source, at) + (shown ? ` of ${shown}` : '');
		if (words.at(-1) !== word || path.length === 1) words.push(word);
	}
	if (words.length <= SHOWN) return words.join(' ← ');
	return [...words.slice(0, SHOWN - 1), '…', words.at(-1)].join(' ← ');
}

function nameOf({ context, quantityOf }: LoopSource, at: number): string {
	return context.at(quantityOf(at))?.layout.quantity.name ?? '';
}

/** The members of a quantity's own cell in words; null for a lifted cell. */
function membersOf({ context, quantityOf, cellOf }: LoopSource, at: number): string | null {
	const layout = context.at(quantityOf(at))?.layout;
	const within = cellOf(at) - (layout?.base ?? 0);
	if (!layout || within < 0 || within >= layout.count) return null;
	return layout.axes
		.map((axis, place) => {
			const ordinal = layout.members[within * layout.axes.length + place] ?? -1;
			return context.sets.get(axis.set)?.ids[ordinal] ?? '';
		})
		.join(', ');
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
			return firstOf([...typed.terms.flatMap(partsOf), ...typed.parameters], quantity);
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
