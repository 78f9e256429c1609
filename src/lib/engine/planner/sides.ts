/** In which unit a yes/no formula compares its two sides: what one unit more of a side is. */
import { parseFormula } from '$lib/formula/parse';
import type { Unit } from '$lib/units/unit';
import { quantityOf } from '../layout';
import { Op } from '../operations';
import { printedKey, type Plan } from '../plan';
import { memoryOf } from './memory';
import { provePart } from './part';
import { partOfCell } from './rules';
import type { Typed } from './types';

/** By plan and formula: every cell of a constraint asks. */
const found = new WeakMap<Plan, Map<string, Unit | null>>();

function knownIn(plan: Plan): Map<string, Unit | null> {
	let units = found.get(plan);
	if (!units) found.set(plan, (units = new Map()));
	return units;
}

/** Null where the cell compares no numbers. Of several comparisons it is the first. */
export function unitOfSides(plan: Plan, cell: number): Unit | null {
	const place = quantityOf(plan.layout, cell);
	const { context } = memoryOf(plan);
	const known = place && context.at(place.index);
	if (!known) return null;
	const rule = known.rules.parts[partOfCell(known.rules, known.layout, cell)];
	if (!rule) return null;
	const key = printedKey(known.layout.index, rule.name);
	const units = knownIn(plan);
	let unit = units.get(key);
	if (unit === undefined) {
		const text = plan.printed.get(key);
		const proven = text !== undefined && parseFormula(text).ok;
		unit = proven ? comparedIn(provePart(context, known, rule.name, text, known.type).typed) : null;
		units.set(key, unit);
	}
	return unit;
}

/** The unit of a quantity as written; null where it is no number. */
export function unitOfQuantity(plan: Plan, name: string): Unit | null {
	const place = plan.layout.byName.get(name);
	const type = place && memoryOf(plan).context.at(place.index)?.type;
	return type?.kind === 'number' ? type.unit : null;
}

const COMPARISONS: readonly number[] = [Op.LessOrEqual, Op.GreaterOrEqual, Op.Equal];

function comparedIn(typed: Typed): Unit | null {
	switch (typed.kind) {
		case 'binary':
			return COMPARISONS.includes(typed.op) && typed.left.type.kind === 'number'
				? typed.left.type.unit
				: null;
		case 'list':
			return firstIn(typed.items);
		case 'aggregate':
			return firstIn(typed.terms.map(({ value }) => value));
		default:
			return null;
	}
}

function firstIn(parts: readonly Typed[]): Unit | null {
	for (const part of parts) {
		const unit = comparedIn(part);
		if (unit) return unit;
	}
	return null;
}
