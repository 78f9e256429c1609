/**
 * A workbook with one of its sets many times over: each member copied with its values, pairs and cases, in
 * every scenario, so that all formulas compute for the copies too. What is shared out, such as metres
 * planned, is divided among a member and its copies, so that the plant stays as full as it was.
 */
import { axesOf } from '$lib/workbook/axes';
import type { Member, Quantity, Relation, Scalar, Values, Workbook } from '$lib/workbook/schema';
import { branch, isTree, put } from '$lib/workbook/values';

/** PX15B for the first, PX15B_2 for the second. */
export const copyId = (id: string, copy: number): string => (copy === 1 ? id : `${id}_${copy}`);

export function grow(
	workbook: Workbook,
	setName: string,
	times: number,
	sharedOut: readonly string[] = []
): Workbook {
	const copies = Array.from({ length: times }, (_, at) => at + 1);
	const quantities = new Map(
		workbook.sheets.flatMap((sheet) =>
			sheet.quantities.map((quantity) => [quantity.name, quantity] as const)
		)
	);
	const valuesOf = (quantity: Quantity, values: Values): Values => {
		const isOfSet = axesOf(quantity).map((axis) => axis.set === setName);
		const share = sharedOut.includes(quantity.name) ? 1 / times : 1;
		return grownValues(values, isOfSet, copies, share);
	};
	return {
		...workbook,
		sets: workbook.sets.map((set) =>
			set.name === setName ? { ...set, members: grownMembers(set.members, copies) } : set
		),
		relations: (workbook.relations ?? []).map((relation) =>
			grownRelation(relation, setName, copies)
		),
		sheets: workbook.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((quantity) => ({
				...grownCases(quantity, setName, copies),
				...(quantity.value === undefined ? {} : { value: valuesOf(quantity, quantity.value) })
			}))
		})),
		scenarios: workbook.scenarios.map((scenario) => ({
			...scenario,
			changes: scenario.changes.map((change) => {
				const quantity = quantities.get(change.quantity);
				return quantity ? { ...change, value: valuesOf(quantity, change.value) } : change;
			})
		})),
		...(workbook.plans && {
			plans: workbook.plans.map((plan) => ({
				...plan,
				values: plan.values.map((entry) => {
					const quantity = quantities.get(entry.quantity);
					return quantity ? { ...entry, value: valuesOf(quantity, entry.value) } : entry;
				})
			}))
		})
	};
}

/** All first, then all second copies: the order of the members stays that of the first. */
const grownMembers = (members: readonly Member[], copies: readonly number[]): Member[] =>
	copies.flatMap((copy) => members.map((member) => ({ ...member, id: copyId(member.id, copy) })));

/** A pair within one set relates each copy to the same copy of the other. */
function grownRelation(relation: Relation, setName: string, copies: readonly number[]): Relation {
	if (!relation.sets.includes(setName)) return relation;
	const pairs = copies.flatMap((copy) =>
		relation.pairs.map((pair) =>
			pair.map((id, at) => (relation.sets[at] === setName ? copyId(id, copy) : id))
		)
	);
	return { ...relation, pairs };
}

function grownCases(quantity: Quantity, setName: string, copies: readonly number[]): Quantity {
	const { formula } = quantity;
	if (typeof formula !== 'object') return quantity;
	const axis = axesOf(quantity).find(({ name }) => name === formula.by);
	if (axis?.set !== setName) return quantity;
	const cases: Record<string, string> = {};
	for (const [id, text] of Object.entries(formula.cases))
		for (const copy of id === '*' ? [1] : copies) put(cases, copyId(id, copy), text);
	return { ...quantity, formula: { ...formula, cases } };
}

function grownValues(
	values: Values,
	isOfSet: readonly boolean[],
	copies: readonly number[],
	share: number
): Values {
	if (!isTree(values)) return sharedScalar(values, share);
	const [isHere, ...below] = isOfSet;
	const grown: { [member: string]: Values } = {};
	for (const copy of isHere ? copies : [1])
		for (const id of Object.keys(values))
			put(grown, copyId(id, copy), grownValues(branch(values, id) ?? null, below, copies, share));
	return grown;
}

const sharedScalar = (scalar: Scalar, share: number): Scalar =>
	typeof scalar === 'number' ? scalar * share : scalar;
