/** Slips in formulas: another name, a part lost, an operator, a number in place of a name, a condition turned. */
import { OK } from '$lib/engine/state';
import { printFormula } from '$lib/formula/print';
import type {
	Binary,
	BinaryOperator,
	Call,
	Expression,
	NumberLiteral,
	Reference
} from '$lib/formula/tree';
import { map, visit } from '$lib/formula/walk';
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findSet, quantityPlaces } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { formulaParts, withFormula, type FormulaPart } from './cells';
import type { Dice } from './dice';
import type { Fault, FaultClass, Seeder, Sound } from './fault';

const NOWHERE = { start: 0, end: 0 };

/** Draws a formula and one of its nodes that fits, and puts another in its place. */
function mutated<Node extends Expression>(
	sound: Sound,
	dice: Dice,
	kind: FaultClass,
	fits: (node: Expression, workbook: Workbook) => node is Node,
	change: (node: Node, part: FormulaPart) => Expression | null
): Fault | null {
	const part = dice.pick(formulaParts(sound.workbook));
	if (!part) return null;
	const nodes: Node[] = [];
	visit(part.tree, (node) => {
		if (fits(node, sound.workbook)) nodes.push(node);
	});
	const node = dice.pick(nodes);
	const next = node && change(node, part);
	if (!node || !next) return null;
	const tree = map(part.tree, (one) => (one === node ? next : one));
	const [was, is] = [node, next].map(printFormula);
	if (was === is) return null;
	return {
		class: kind,
		quantity: part.quantity.name,
		what: `${clip(was!)} became ${clip(is!)}`,
		edit: withFormula(part, tree)
	};
}

const clip = (text: string) => (text.length > 60 ? `${text.slice(0, 57)}…` : text);

const isQuantity = (node: Expression, workbook: Workbook): node is Reference =>
	node.kind === 'reference' &&
	node.qualifier === null &&
	findQuantity(workbook, node.name) !== undefined;

/** Another quantity per the same sets: of the same unit as a rule, else any. */
export const wrongReference: Seeder = (sound, dice) =>
	mutated(sound, dice, 'reference', isQuantity, (node, part) => {
		const own = findQuantity(sound.workbook, node.name)!;
		const alike = (other: Quantity) =>
			other.name !== own.name &&
			other.name !== part.quantity.name &&
			(other.type ?? 'number') === (own.type ?? 'number') &&
			axesOf(other).length === axesOf(own).length;
		const all = [...quantityPlaces(sound.workbook).values()].map(({ quantity }) => quantity);
		const isSameUnit = dice.chance(0.6);
		const other = dice.pick(
			all.filter((one) => alike(one) && (!isSameUnit || (one.unit ?? '1') === (own.unit ?? '1')))
		);
		return other ? { ...node, name: other.name } : null;
	});

const isArithmetic = (node: Expression): node is Binary =>
	node.kind === 'binary' && ['+', '-', '*', '/'].includes(node.operator);

export const droppedPart: Seeder = (sound, dice) =>
	mutated(sound, dice, 'dropped', isArithmetic, ({ left, right, operator }) =>
		operator === '-' || operator === '/' || dice.chance(0.5) ? left : right
	);

const OTHER: Partial<Record<BinaryOperator, BinaryOperator>> = {
	'+': '-',
	'-': '+',
	'*': '/',
	'/': '*'
};

export const otherOperator: Seeder = (sound, dice) =>
	mutated(sound, dice, 'operator', isArithmetic, (node) => ({
		...node,
		operator: OTHER[node.operator]!
	}));

const literal = (value: number, unit: string | null): NumberLiteral => ({
	...{ kind: 'number', value, text: String(value), unit, span: NOWHERE, unitSpan: null }
});

/** What a name stands for today, as a number; with its unit as a rule. */
export const hardCoded: Seeder = (sound, dice) =>
	mutated(sound, dice, 'hard_coded', isQuantity, ({ name }) => {
		const laid = sound.plan.layout.byName.get(name);
		const cell = laid && laid.base + dice.below(laid.count);
		if (!laid || cell === undefined || sound.base.states[cell] !== OK) return null;
		const { type = 'number', unit = '1' } = laid.quantity;
		const value = Number(sound.base.values[cell]!.toPrecision(4));
		if (type !== 'number' || value < 0 || /e/.test(String(value))) return null;
		return literal(value, unit === '1' || dice.chance(0.3) ? null : unit);
	});

const isGathering = (node: Expression): node is Call =>
	node.kind === 'call' && node.args.some(({ over }) => over.length > 0);

/** A member left out, or a condition lost. */
export const rangeOfSum: Seeder = (sound, dice) =>
	mutated(sound, dice, 'range_of_sum', isGathering, (node) => {
		const at = node.args.findIndex(({ over }) => over.length > 0);
		const argument = node.args[at]!;
		const { axis, index } = argument.over[dice.below(argument.over.length)]!;
		const set = findSet(sound.workbook, axis);
		const member = set && dice.pick(set.members);
		const isLost = argument.where !== null && dice.chance(0.5);
		if (!isLost && (!member || argument.where !== null)) return null;
		const name = (text: string, qualifier: string | null, quoted = false): Reference => ({
			...{ kind: 'reference', qualifier, name: text, quoted, indices: [], otherwise: null },
			...{ span: NOWHERE, nameSpan: NOWHERE }
		});
		const isName = member && /^\p{L}[\p{L}\p{N}_]*$/u.test(member.id);
		const where: Expression | null = isLost
			? null
			: {
					kind: 'binary',
					operator: '<>',
					left: name(index ?? axis, null),
					right: name(member!.id, axis, !isName),
					span: NOWHERE
				};
		const args = node.args.map((one, i) => (i === at ? { ...one, where } : one));
		return { ...node, args };
	});

const TURNED: Readonly<Record<string, string>> = {
	...{ MIN: 'MAX', MAX: 'MIN', AND: 'OR', OR: 'AND' },
	...{ '<': '>', '>': '<', '<=': '>=', '>=': '<=', '=': '<>', '<>': '=' }
};
const isCondition = (node: Expression): node is Call | Binary =>
	(node.kind === 'call' && (node.name in TURNED || node.name === 'IF')) ||
	(node.kind === 'binary' && node.operator in TURNED);

export const turnedCondition: Seeder = (sound, dice) =>
	mutated(sound, dice, 'condition', isCondition, (node) => {
		if (node.kind === 'binary')
			return { ...node, operator: TURNED[node.operator] as BinaryOperator };
		if (node.name !== 'IF') return { ...node, name: TURNED[node.name]! };
		const [test, yes, no] = node.args;
		return test && yes && no ? { ...node, args: [test, no, yes] } : null;
	});

const isConstant = (node: Expression): node is NumberLiteral =>
	node.kind === 'number' && node.value !== 0;

/** A number in a formula off by a scale, or a factor too many. */
export const scaleConstant: Seeder = (sound, dice) => {
	const factor = dice.pick([10, 60, 100, 1000, 1 / 10, 1 / 60, 1 / 100, 1 / 1000])!;
	const scaled = (value: number) => Number((value * factor).toPrecision(6));
	if (dice.chance(0.5))
		return mutated(sound, dice, 'scale', isConstant, (node) =>
			literal(scaled(node.value), node.unit)
		);
	return mutated(sound, dice, 'scale', isQuantity, (node) => ({
		kind: 'binary',
		operator: factor > 1 ? '*' : '/',
		left: node,
		right: literal(factor > 1 ? factor : Math.round(1 / factor), null),
		span: NOWHERE
	}));
};
