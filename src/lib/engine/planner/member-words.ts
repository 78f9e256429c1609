/** Words about sets and their members that somebody mistyped or mistook. */
import { nearest, quoteIfNeeded } from '$lib/formula/names';
import type { Reference } from '$lib/formula/tree';
import type { QuantityLayout } from '../layout';
import type { Proof } from './proof';

export function unknownSet(proof: Proof, value: Reference): false {
	const qualifier = value.qualifier ?? '';
	const quantity = proof.context.quantity(qualifier);
	if (quantity) return memberAfterPoint(proof, quantity.layout, value);
	const near = nearest(qualifier, proof.context.sets.keys());
	const message = `There is no set ${qualifier}${near ? `: ${near}?` : ', and only a set stands before a point: check the name.'}`;
	proof.report('unknown-set', message, value.span, near && `${near}.${quoteIfNeeded(value.name)}`);
	return false;
}

/** `price.steel`: a point belongs to sets, and a quantity takes its member in brackets. */
function memberAfterPoint(
	proof: Proof,
	{ quantity, axes }: QuantityLayout,
	value: Reference
): false {
	const member = quoteIfNeeded(value.name);
	const better = `${quantity.name}[${member}]`;
	const per = axes.map(({ name }) => name).join(' and ');
	const message =
		axes.length === 0
			? `${quantity.name} has one value in all, so no member belongs behind it: write ${quantity.name}.`
			: `A point stands between a set and its member, and ${quantity.name} is a quantity per ${per}: write ${better}.`;
	proof.report('unknown-set', message, value.span, axes.length === 0 ? quantity.name : better);
	return false;
}

export function unknownMember(proof: Proof, set: string, value: Reference): false {
	const known = proof.context.sets.get(set);
	const near = known && nearest(value.name, known.ids);
	const message = `${value.name} is no member of ${set}; ${membersWords(proof, set)}.${near ? ` ${near}?` : ''}`;
	proof.report('unknown-member', message, value.nameSpan, near && quoteIfNeeded(near));
	return false;
}

/** "the stages are extrude, rewind, crosslink". */
export function membersWords(proof: Proof, set: string): string {
	const known = proof.context.sets.get(set);
	if (!known || known.ids.length === 0) return `${set} has no members yet`;
	const shown = known.ids.slice(0, 8).map(quoteIfNeeded).join(', ');
	return `the ${known.plural.toLowerCase()} are ${shown}${known.ids.length > 8 ? ', …' : ''}`;
}
