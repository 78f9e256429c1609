/** The variables that run at a place, and those that the aggregate around it takes up. */
import type { QuantityLayout } from '../layout';
import type { Proof } from './proof';
import type { Scope } from './scope';
import type { Variable } from './types';

/** The variable that a quantity's axis aligns with, if one runs. */
export function running(scope: Scope, quantity: QuantityLayout, at: number): Variable | undefined {
	const axis = quantity.axes[at];
	const variable = axis && scope.find(axis.name);
	return variable && variable.set === axis.set ? variable : undefined;
}

/** A new variable of the innermost aggregate around that gathers what its author left out. */
export function gather(
	proof: Proof,
	scope: Scope,
	name: string,
	set: string
): Variable | undefined {
	const collector = scope.collector;
	if (!collector) return undefined;
	const variable = proof.variable(name, set);
	collector.add(variable);
	return variable;
}

/** A set's own name where nothing of that name runs: the aggregate around gathers it. */
export function gatherAxis(proof: Proof, scope: Scope, set: string): Variable | undefined {
	return gather(proof, scope, set, set);
}
