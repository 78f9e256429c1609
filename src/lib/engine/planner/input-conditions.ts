/** Entered values that count under a condition only. */
import type { ProvenPart, ProvenQuantity } from './absence';
import { INPUT } from './rules';

/** The conditions under which entered values count, of quantities that have some. */
export function conditionsOfInputs(
	proven: readonly ProvenQuantity[]
): ReadonlyMap<number, ProvenPart> {
	const conditions = new Map<number, ProvenPart>();
	for (const { known, where } of proven) {
		const { rules, layout } = known;
		const isInput = rules.axis < 0 ? rules.parts.length === 0 : rules.partOfMember.includes(INPUT);
		if (where && isInput && where.typed.kind !== 'broken') conditions.set(layout.index, where);
	}
	return conditions;
}
