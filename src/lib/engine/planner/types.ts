/**
 * A formula after resolution: every name is a quantity, a member or the current member of an axis, every
 * reference says where each of its axes comes from, every number has a proven unit, and conversions stand where
 * scales meet. One tree holds for all cells of a quantity; `lower.ts` expands it cell by cell.
 */
import type { Expression, Span } from '$lib/formula/tree';
import { ONE } from '$lib/units/algebra';
import type { Unit } from '$lib/units/unit';
import type { QuantityLayout } from '../layout';
import type { AggregateOp, Op, ScalarOp } from '../operations';
import type { Scope } from './scope';

export type ValueType =
	| NumberType
	| { readonly kind: 'yes_no' }
	| { readonly kind: 'member'; readonly set: string }
	/** A problem has been reported; nothing more is said about what contains it. */
	| { readonly kind: 'bad' };

export interface NumberType {
	readonly kind: 'number';
	readonly unit: Unit;
	/** A written 0, which has any unit. */
	readonly any: boolean;
	/** Made of written numbers without a unit alone. */
	readonly bare: boolean;
}

export const BAD: ValueType = { kind: 'bad' };
export const YES_NO: ValueType = { kind: 'yes_no' };
export const PLAIN: NumberType = { kind: 'number', unit: ONE, any: false, bare: false };
export const numberIn = (unit: Unit): NumberType => ({
	kind: 'number',
	unit,
	any: false,
	bare: false
});

interface Common {
	readonly type: ValueType;
	/** One bit for each axis variable that the value depends on. */
	readonly free: number;
	/** Known when the plan is made: no scenario changes it. */
	readonly fixed: boolean;
	readonly source: Expression | null;
}

export type Typed =
	| Constant
	| VariableValue
	| MemberNumber
	| Read
	| UnaryOperation
	| BinaryOperation
	| ListOperation
	| Conversion
	| Aggregate
	| Broken;

export interface Broken extends Common {
	readonly kind: 'broken';
}

/** A number in the unit of its type, yes or no as 1 or 0, a member's ordinal. */
export interface Constant extends Common {
	readonly kind: 'constant';
	readonly value: number;
}

/** The ordinal of the current member along an axis. */
export interface VariableValue extends Common {
	readonly kind: 'variable';
	readonly slot: number;
}

/** ORD and NUMBER: a number by ordinal. */
export interface MemberNumber extends Common {
	readonly kind: 'member-number';
	readonly which: 'place' | 'number';
	readonly of: Typed;
	readonly numbers: ArrayLike<number>;
}

export interface Read extends Common {
	readonly kind: 'read';
	readonly quantity: QuantityLayout;
	/** Where each axis of the quantity comes from. */
	readonly indices: readonly AxisIndex[];
	/** 0 this scenario, 1 the one it is measured against, 2 the base. */
	readonly scenario: 0 | 1 | 2;
	/** What holds off the end. */
	readonly otherwise: Typed | null;
}

export type AxisIndex =
	| { readonly kind: 'variable'; readonly slot: number }
	| { readonly kind: 'member'; readonly ordinal: number }
	| { readonly kind: 'neighbour'; readonly slot: number; readonly offset: number }
	| { readonly kind: 'choice'; readonly of: Typed };

export interface UnaryOperation extends Common {
	readonly kind: 'unary';
	readonly op: ScalarOp;
	readonly of: Typed;
}

export interface BinaryOperation extends Common {
	readonly kind: 'binary';
	readonly op: ScalarOp | typeof Op.IfError;
	readonly left: Typed;
	readonly right: Typed;
}

/** AND, OR, IF. */
export interface ListOperation extends Common {
	readonly kind: 'list';
	readonly op: typeof Op.And | typeof Op.Or | typeof Op.If;
	readonly items: readonly Typed[];
}

export interface Conversion extends Common {
	readonly kind: 'conversion';
	readonly of: Typed;
	readonly factor: number;
}

export interface Aggregate extends Common {
	readonly kind: 'aggregate';
	readonly op: AggregateOp;
	readonly name: string;
	readonly terms: readonly Terms[];
	readonly parameters: readonly Typed[];
	readonly otherwise: Typed | null;
	/** What stands around the call; which variables that are is only known when the whole formula is read. */
	readonly scope: Scope;
	/**
	 * What the terms are placed by: ordinals for ARGMIN and ARGMAX, members' numbers for PAYBACK, what
	 * each value is paired with for SLOPE and INTERCEPT.
	 */
	readonly positions: 'ordinal' | 'paired' | ArrayLike<number> | null;
	readonly span: Span;
}

/** One argument of an aggregate: what it gathers, of what, and under which condition. */
export interface Terms {
	readonly gathered: readonly Variable[];
	readonly value: Typed;
	readonly where: Typed | null;
	/** What each value is paired with: the x of SLOPE. */
	readonly paired: Typed | null;
	/** References at the gathered members themselves: only pairs that exist in all of them are gathered. */
	readonly direct: readonly Read[];
	readonly span: Span;
}

/** An axis that runs: one of the quantity's own, or a gathered one. */
export interface Variable {
	/** The axis name, or the index name of `over l in layer`. */
	readonly name: string;
	readonly set: string;
	readonly size: number;
	readonly slot: number;
}
