/** Values of which one is taken: the branches of IF and IFERROR, the `else` of an index or of an aggregate. */
import { alike } from './arithmetic';
import { asNumber, type TypedNumber } from './convert-typed';
import type { Proof } from './proof';
import type { Typed } from './types';

/** The values in one type and unit, or null after a problem. */
export function unified(proof: Proof, values: readonly Typed[]): Typed[] | null {
	if (values.some((value) => value.type.kind === 'bad')) return null;
	const kinds = new Set(values.map((value) => value.type.kind));
	if (kinds.size === 1 && kinds.has('yes_no')) return [...values];
	const members = values.flatMap((value) => (value.type.kind === 'member' ? [value.type.set] : []));
	if (members.length > 0) {
		if (members.length === values.length && new Set(members).size === 1) return [...values];
		const odd = values.find(
			(value) => value.type.kind !== 'member' || value.type.set !== members[0]
		);
		const source = odd?.source ?? values[0]?.source;
		if (source)
			proof.report(
				'unlike-members',
				`One value here is a member of ${members[0]}, but ${proof.words(source)} is not: give members of ${members[0]} in all of them.`,
				source.span
			);
		return null;
	}
	const numbers = values.map((value) => asNumber(proof, value));
	if (numbers.some((number) => number === null)) return null;
	return alike(proof, numbers as TypedNumber[], 'taken in place of one another');
}

/** The type that holds for all of them. */
export function commonType(values: readonly Typed[]): Typed['type'] {
	const first = values[0];
	if (first?.type.kind !== 'number') return first?.type ?? { kind: 'bad' };
	const types = values.flatMap((value) => (value.type.kind === 'number' ? [value.type] : []));
	return {
		...first.type,
		any: types.every((type) => type.any),
		bare: types.every((type) => type.bare || type.any)
	};
}
