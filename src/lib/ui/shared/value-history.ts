/** Which changes of a quantity's values are those of one value. */
import type { ValueChange } from '$lib/protocol/answers';

/** Changes told at most. */
const MOST = 12;

/**
 * Those of the value at these members, in these scenarios. A value may have been entered for all members at once, so
 * that a shorter place is the value's too.
 */
export function changesOf(
	changes: readonly ValueChange[],
	at: readonly string[],
	scenarios: readonly string[]
): ValueChange[] {
	return changes
		.filter(
			(change) =>
				scenarios.includes(change.scenario) && change.at.every((member, i) => member === at[i])
		)
		.slice(0, MOST);
}
