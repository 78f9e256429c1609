/**
 * The plans of two versions put together, and never asked about: a plan is made from the rest, and made anew where it no
 * longer fits. Whether one is kept as it stands is somebody's doing, and comes from whoever did it.
 */
import type { ProgrammePlan } from '../programme-schema';
import type { Versions } from './nodes';
import { same, type Node } from './same';

export function mergePlans(versions: Versions): Node {
	const [base, mine, theirs] = [versions.base, versions.mine, versions.theirs].map(byPlace);
	const merged = [...new Set([...mine!.keys(), ...theirs!.keys()])].flatMap(
		(key) => chosen(base!.get(key), mine!.get(key), theirs!.get(key)) ?? []
	);
	return merged.length > 0 ? (merged as unknown as Node) : undefined;
}

type Plan = ProgrammePlan | undefined;

function chosen(base: Plan, mine: Plan, theirs: Plan): Plan {
	if (isSame(base, mine)) return theirs;
	const isTheirDoing = base?.kept !== theirs?.kept && base?.kept === mine?.kept;
	return isTheirDoing ? theirs : mine;
}

const isSame = (one: Plan, other: Plan) => same(one as unknown as Node, other as unknown as Node);

const byPlace = (plans: Node): ReadonlyMap<string, ProgrammePlan> =>
	new Map(
		((plans ?? []) as unknown as ProgrammePlan[]).map((plan) => [
			`${plan.programme} ${plan.scenario}`,
			plan
		])
	);
