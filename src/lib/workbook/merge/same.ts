/** Whether two pieces of a workbook say the same, whatever the order of their fields. */
import type { Json } from '../json';

/** A piece of a workbook; undefined where there is none. */
export type Node = Json | undefined;
export type Fields = { readonly [field: string]: Json };

export const isFields = (node: Node): node is { [field: string]: Json } =>
	typeof node === 'object' && node !== null && !Array.isArray(node);

export function same(a: Node, b: Node): boolean {
	if (a === b) return true;
	if (Array.isArray(a))
		return (
			Array.isArray(b) && a.length === b.length && a.every((entry, place) => same(entry, b[place]))
		);
	if (!isFields(a) || !isFields(b)) return false;
	const keys = Object.keys(a).filter((key) => a[key] !== undefined);
	return (
		keys.length === Object.keys(b).filter((key) => b[key] !== undefined).length &&
		keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
	);
}

/** One field, and nothing of what every object inherits. */
export const fieldOf = (fields: Fields | undefined, name: string): Node =>
	fields !== undefined && Object.hasOwn(fields, name) ? fields[name] : undefined;
