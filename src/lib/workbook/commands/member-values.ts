/**
 * What is kept by member, with one member copied or renamed: values of the base and of scenarios, choices
 * that hold it, pairs, cases, roles in pictures, the first subject.
 */
import { axesOf } from '../axes';
import { roleSetOf } from '../picture-names';
import { findQuantity } from '../lookup';
import type { Picture, Quantity, Relation, Values, Workbook } from '../schema';
import { branch, isTree, put } from '../values';
import { mapStudies, mapStudyNames } from '../study-names';
import { mapped } from './lists';
import { mapPlanValues } from './programme-names';
import { mapChanges, mapPictures, mapQuantities, withValue } from './parts';

/** Gives the member `to` all that `from` has. */
export function copiedMember(workbook: Workbook, set: string, from: string, to: string): Workbook {
	const next = mapValues(workbook, (quantity, values) =>
		axesOf(quantity).reduce(
			(here, axis, depth) =>
				axis.set === set ? atDepth(here, depth, (tree) => withKeyCopied(tree, from, to)) : here,
			values
		)
	);
	const related = mapRelations(next, (relation) => ({
		...relation,
		pairs: relation.sets.reduce(
			(pairs, name, column) =>
				name !== set
					? pairs
					: pairs.flatMap((pair) =>
							pair[column] === from ? [pair, pair.map((id, i) => (i === column ? to : id))] : [pair]
						),
			relation.pairs
		)
	}));
	return mapRoles(related, set, (roles) => withKeyCopied(roles, from, to));
}

/** Calls the member `to` wherever it is called `from`, formulas apart. */
export function renamedMember(workbook: Workbook, set: string, from: string, to: string): Workbook {
	let next = mapValues(workbook, (quantity, values) => {
		const renamed = axesOf(quantity).reduce(
			(here, axis, depth) =>
				axis.set === set ? atDepth(here, depth, (tree) => withKeyRenamed(tree, from, to)) : here,
			values
		);
		return typeof quantity.type === 'object' && quantity.type.member_of === set
			? mapScalars(renamed, (scalar) => (scalar === from ? to : scalar))
			: renamed;
	});
	next = mapQuantities(next, (quantity) => {
		const { formula } = quantity;
		if (typeof formula !== 'object' || !Object.hasOwn(formula.cases, from)) return quantity;
		if (axesOf(quantity).find(({ name }) => name === formula.by)?.set !== set) return quantity;
		return {
			...quantity,
			formula: { ...formula, cases: withKeyRenamed(formula.cases, from, to) }
		};
	});
	next = mapPlanValues(next, (quantity, values) =>
		axesOf(quantity).reduce(
			(here, axis, depth) =>
				axis.set === set ? atDepth(here, depth, (tree) => withKeyRenamed(tree, from, to)) : here,
			values
		)
	);
	next = mapRelations(next, (relation) => ({
		...relation,
		pairs: mapped(relation.pairs, (pair) =>
			mapped(pair, (id, column) => (relation.sets[column] === set && id === from ? to : id))
		)
	}));
	next = mapRoles(next, set, (roles) => withKeyRenamed(roles, from, to));
	next = mapStudies(next, (study) =>
		mapStudyNames(study, {
			members: (name, members) => {
				const axes = axesOf(findQuantity(workbook, name) ?? { name, label: name });
				return members.map((id, i) => (axes[i]?.set === set && id === from ? to : id));
			}
		})
	);
	const { front } = next;
	return front?.subject === set && front.first_subject === from
		? { ...next, front: { ...front, first_subject: to } }
		: next;
}

function mapValues(
	workbook: Workbook,
	change: (quantity: Quantity, values: Values) => Values
): Workbook {
	let next = mapQuantities(workbook, (quantity) =>
		quantity.value === undefined ? quantity : withValue(quantity, change(quantity, quantity.value))
	);
	const values = (name: string, value: Values) => {
		const quantity = findQuantity(workbook, name);
		return quantity ? change(quantity, value) : value;
	};
	next = mapStudies(next, (study) => mapStudyNames(study, { values }));
	return mapChanges(next, (one) => {
		const value = values(one.quantity, one.value);
		return value === one.value ? one : { ...one, value };
	});
}

function mapRelations(workbook: Workbook, change: (relation: Relation) => Relation): Workbook {
	return workbook.relations
		? { ...workbook, relations: mapped(workbook.relations, change) }
		: workbook;
}

function mapRoles(
	workbook: Workbook,
	set: string,
	change: (roles: { readonly [member: string]: string }) => { readonly [member: string]: string }
): Workbook {
	return mapPictures(workbook, (picture) => {
		if (!('roles' in picture) || roleSetOf(workbook, picture) !== set) return picture;
		// The roles themselves stay those of this kind of picture; only members change.
		return { ...picture, roles: change(picture.roles) } as Picture;
	});
}

type Tree<V> = { readonly [key: string]: V };

/** Changes every object that stands so many levels down. */
function atDepth(values: Values, depth: number, change: (tree: Tree<Values>) => Values): Values {
	if (!isTree(values)) return values;
	if (depth === 0) return change(values);
	return mapEntries(values, (value) => atDepth(value, depth - 1, change));
}

function mapScalars(values: Values, change: (scalar: Values) => Values): Values {
	return isTree(values)
		? mapEntries(values, (values) => mapScalars(values, change))
		: change(values);
}

function mapEntries(tree: Tree<Values>, change: (value: Values) => Values): Values {
	let changed = false;
	const next: { [key: string]: Values } = {};
	for (const key of Object.keys(tree)) {
		const value = branch(tree, key) ?? null;
		const mappedValue = change(value);
		if (mappedValue !== value) changed = true;
		put(next, key, mappedValue);
	}
	return changed ? next : tree;
}

function withKeyCopied<V>(tree: Tree<V>, from: string, to: string): Tree<V> {
	if (!Object.hasOwn(tree, from)) return tree;
	const next = { ...tree };
	put(next, to, tree[from] as V);
	return next;
}

/** The order of the keys stays. */
function withKeyRenamed<V>(tree: Tree<V>, from: string, to: string): Tree<V> {
	if (!Object.hasOwn(tree, from)) return tree;
	const next: { [key: string]: V } = {};
	for (const key of Object.keys(tree)) put(next, key === from ? to : key, tree[key] as V);
	return next;
}
