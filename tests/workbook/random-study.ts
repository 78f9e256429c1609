/** Random studies of every kind for a workbook: some ask about what is not there, as studies may. */
import { axesOf } from '$lib/workbook/axes';
import { findSet, quantityPlaces } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { STUDY_KINDS, type Study } from '$lib/workbook/study-schema';
import type { Distribution } from '$lib/workbook/study-shapes';
import { changeable, randomScenario, type Dice } from './arbitrary';

export const STUDY_NAMES = ['s_one', 'constructor', 'valueOf', 's_two'];
const NUMBERS = [0, 1, -1, 1.5, 1e-9, 123456789];

export function randomStudy(workbook: Workbook, dice: Dice, name: string): Study {
	const head = {
		name,
		title: `Title of ${name}`,
		...randomCells(workbook, dice, false),
		...(dice.chance(30) ? { note: 'a note' } : {}),
		...(dice.chance(30)
			? { ran: { stood_on: 'abc', headline: [{ label: 'Mean', value: dice.pick([null, 2]) }] } }
			: {})
	};
	const scenario = randomScenarioId(workbook, dice);
	const mode = dice.pick(['set', 'scale', 'add'] as const);
	const cells = () => randomCells(workbook, dice, true);
	const from = dice.pick(NUMBERS);
	const range = { mode, from, to: from + 1.25 };
	switch (dice.pick(STUDY_KINDS)) {
		case 'bridge':
			return {
				...head,
				kind: 'bridge',
				from: scenario,
				to: randomScenarioId(workbook, dice),
				...(dice.chance(50) ? { groups: [{ label: 'Both', changes: [cells(), cells()] }] } : {})
			};
		case 'sensitivity':
			return {
				...head,
				kind: 'sensitivity',
				scenario,
				inputs: [{ ...cells(), mode, low: from, high: from + 2 }],
				cases: [{ label: 'Downside', moves: [{ ...cells(), mode, value: from }] }]
			};
		case 'map':
			return {
				...head,
				kind: 'map',
				scenario,
				across: { ...cells(), ...range, steps: 3 },
				down: { ...cells(), ...range, steps: 4, label: 'Down' }
			};
		case 'break_even':
			return { ...head, kind: 'break_even', scenario, input: { ...cells(), ...range }, target: 0 };
		case 'risk':
			return {
				...head,
				kind: 'risk',
				scenario,
				inputs: ['A', '__proto__'].map((label) => ({
					label,
					...cells(),
					mode,
					distribution: randomDistribution(dice)
				})),
				correlations: [{ between: ['A', '__proto__'], rank: 0.5 }],
				draws: 100,
				seed: dice.roll(1000),
				...(dice.chance(50) ? { target: { at_least: 3 } } : {})
			};
		case 'optimise': {
			const { changes } = randomScenario(workbook, dice, 'any');
			return {
				...head,
				kind: 'optimise',
				scenario,
				direction: dice.pick(['highest', 'lowest']),
				options: [{ label: 'One', alternatives: [{ label: 'a', changes }] }],
				...(dice.chance(50)
					? { limits: [{ ...randomCells(workbook, dice, false), bound: { at_most: 9 } }] }
					: {})
			};
		}
	}
}

function randomDistribution(dice: Dice): Distribution {
	return dice.pick<Distribution>([
		{ kind: 'triangular', min: 0, likely: 1, max: 2 },
		{ kind: 'normal', mean: 0, sd: 1 },
		{ kind: 'discrete', values: [{ value: 1, weight: 2 }] },
		{ kind: 'data', values: [1, 2, 3] }
	]);
}

function randomScenarioId(workbook: Workbook, dice: Dice): string {
	return dice.chance(20) ? 'long_gone' : dice.pick(workbook.scenarios).id;
}

function randomCells(
	workbook: Workbook,
	dice: Dice,
	open: true
): { quantity: string; members?: (string | null)[] };
function randomCells(
	workbook: Workbook,
	dice: Dice,
	open: false
): { quantity: string; members?: string[] };
function randomCells(workbook: Workbook, dice: Dice, open: boolean) {
	const inputs = open ? changeable(workbook) : [];
	const any = dice.pick([...quantityPlaces(workbook).values()])?.quantity;
	const quantity = inputs.length > 0 ? dice.pick(inputs) : any;
	if (!quantity || dice.chance(10)) return { quantity: 'long_gone' };
	const members = axesOf(quantity).map(({ set }) => {
		const ids = findSet(workbook, set)?.members ?? [];
		return ids.length === 0 || (open && dice.chance(30)) ? null : dice.pick(ids).id;
	});
	const whole = members.every((id) => id !== null);
	return members.length > 0 && (open || whole)
		? { quantity: quantity.name, members }
		: { quantity: quantity.name };
}
