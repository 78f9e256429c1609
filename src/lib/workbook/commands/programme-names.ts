/** Programmes and their plans when what they name is called otherwise, or goes. */
import { findQuantity } from '../lookup';
import type { Programme, ProgrammePlan } from '../programme-schema';
import type { Quantity, Values, Workbook } from '../schema';
import { mapped } from './lists';

interface Naming {
	readonly quantity?: (name: string) => string;
	readonly scenario?: (id: string) => string;
	readonly set?: (name: string) => string;
}

const same = (name: string) => name;

export function mapProgrammeNames(workbook: Workbook, naming: Naming): Workbook {
	const { quantity = same, scenario = same, set = same } = naming;
	const programme = (one: Programme): Programme => ({
		...one,
		...(one.each && { each: one.each.map(set) }),
		...(one.maximise !== undefined && { maximise: quantity(one.maximise) }),
		...(one.minimise !== undefined && { minimise: quantity(one.minimise) }),
		decisions: one.decisions.map(quantity),
		constraints: one.constraints.map(quantity),
		...(one.shadow_prices && {
			shadow_prices: Object.fromEntries(
				Object.entries(one.shadow_prices).map(([name, of]) => [quantity(name), quantity(of)])
			)
		})
	});
	const plan = (one: ProgrammePlan): ProgrammePlan => ({
		...one,
		scenario: scenario(one.scenario),
		values: one.values.map((each) => ({ ...each, quantity: quantity(each.quantity) }))
	});
	return {
		...workbook,
		...(workbook.programmes && { programmes: workbook.programmes.map(programme) }),
		...(workbook.plans && { plans: workbook.plans.map(plan) })
	};
}

/** The values that plans hold, quantity by quantity. */
export function mapPlanValues(
	workbook: Workbook,
	change: (quantity: Quantity, values: Values) => Values
): Workbook {
	if (!workbook.plans) return workbook;
	const plans = mapped(workbook.plans, (plan) => {
		const values = mapped(plan.values, (each) => {
			const quantity = findQuantity(workbook, each.quantity);
			const value = quantity ? change(quantity, each.value) : each.value;
			return value === each.value ? each : { ...each, value };
		});
		return values === plan.values ? plan : { ...plan, values };
	});
	return plans === workbook.plans ? workbook : { ...workbook, plans };
}

/** The programmes that one of these quantities is part of. */
export function programmesOn(workbook: Workbook, names: ReadonlySet<string>): string[] {
	return (workbook.programmes ?? []).flatMap((programme) =>
		partsOf(programme).some((name) => names.has(name)) ? [`the programme ${programme.title}`] : []
	);
}

/** Without programmes whose objective has gone or that have nothing left to decide, and their plans. */
export function withoutInProgrammes(workbook: Workbook, gone: ReadonlySet<string>): Workbook {
	const { programmes, plans, ...rest } = workbook;
	if (!programmes?.some((programme) => partsOf(programme).some((name) => gone.has(name))))
		return workbook;
	const stays = (name: string) => !gone.has(name);
	const left = programmes.flatMap((programme) => {
		const objective = programme.maximise ?? programme.minimise;
		const decisions = programme.decisions.filter(stays);
		if ((objective !== undefined && gone.has(objective)) || decisions.length === 0) return [];
		const { shadow_prices, ...others } = programme;
		const shadows = Object.entries(shadow_prices ?? {}).filter((pair) => pair.every(stays));
		return [
			{
				...others,
				decisions,
				constraints: programme.constraints.filter(stays),
				...(shadows.length > 0 && { shadow_prices: Object.fromEntries(shadows) })
			}
		];
	});
	const kept = (plans ?? [])
		.filter(({ programme }) => left.some(({ name }) => name === programme))
		.map((plan) => ({ ...plan, values: plan.values.filter(({ quantity }) => stays(quantity)) }));
	return {
		...rest,
		...(left.length > 0 && { programmes: left }),
		...(kept.length > 0 && { plans: kept })
	};
}

/** Without the plans of a scenario that goes. */
export function withoutPlansOf(workbook: Workbook, scenario: string): Workbook {
	const { plans, ...rest } = workbook;
	const kept = plans?.filter((plan) => plan.scenario !== scenario);
	if (!kept || kept.length === plans!.length) return workbook;
	return kept.length > 0 ? { ...rest, plans: kept } : rest;
}

const partsOf = (programme: Programme): string[] => [
	...[programme.maximise, programme.minimise].filter((name) => name !== undefined),
	...programme.decisions,
	...programme.constraints,
	...Object.entries(programme.shadow_prices ?? {}).flat()
];
