/** Studies that plan anew at every point, against a plant that is planned by hand. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { FromStudyWorker } from '$lib/browser/study-messages';
import { StudyServer } from '$lib/browser/study-server';
import { OK } from '$lib/engine/state';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { restsOnProgramme } from '$lib/studies/behind';
import { fingerprintOf } from '$lib/studies/fingerprint';
import { asksForPlans, type Replanning } from '$lib/studies/following';
import { runStudyHere } from '$lib/studies/run';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { smallPlant, withQuantity } from '../programmes/small-plant';

let replanning: Replanning;
beforeAll(async () => {
	replanning = { solver: await Solver.load(), memory: new Memory() };
});

/**
 * The small plant with a case beside it: what the case earns more than the base, less an outlay. With 100 h of L1 in
 * January the base earns 7,270 EUR; every 10 h more or less are 100 m of B that wait for February: 2 − 0.1 EUR each.
 */
const plant = (change: (book: Workbook) => Workbook = (book) => book): Workbook =>
	smallPlant((book) =>
		change({
			...book,
			sheets: [
				...book.sheets,
				{
					title: 'Case',
					quantities: [
						{ name: 'outlay', label: 'Outlay', unit: 'EUR', value: 0 },
						{
							name: 'gain',
							label: 'Gain',
							unit: 'EUR',
							formula: 'contribution - contribution[reference] - outlay'
						}
					]
				}
			]
		})
	);

const study = <S extends Omit<Study, 'name' | 'title'>>(settings: S) =>
	({ name: 'asked', title: 'Asked', ...settings }) as unknown as Study;

function found(workbook: Workbook, settings: Study) {
	const result = runStudyHere(workbook, settings, { replanning });
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const hours = { quantity: 'hours', members: ['L1', 'jan'], mode: 'set' } as const;
const combination = study({
	kind: 'optimise',
	quantity: 'gain',
	scenario: 'base',
	direction: 'highest',
	options: [
		{
			label: 'Hours',
			alternatives: [
				{ label: 'As it is', changes: [] },
				{ label: 'More', changes: [{ quantity: 'hours', value: { L1: { jan: 110 } } }] }
			]
		}
	]
});

describe('the best combination', () => {
	const ranked = (workbook: Workbook, settings = combination) => {
		const result = found(workbook, settings);
		if (result.kind !== 'optimise') throw new Error(result.kind);
		return result.ranked.map(({ choice, value }) => [choice[0], value]);
	};

	it('plans each choice and what it is measured against: doing nothing earns nothing', () => {
		const found = ranked(plant());
		expect(found.map(([choice]) => choice)).toEqual([1, 0]);
		expect(found[0]![1]).toBeCloseTo(190, 4);
		expect(found[1]![1]).toBeCloseTo(0, 6);
	});

	it('leaves plans as they stand where it is asked to: hours that nobody plans earn nothing', () => {
		const planned = { ...combination, plans: 'keep' } as Study;
		expect(asksForPlans(plant(), planned)).toBe(false);
		const result = runStudyHere(plant(), planned, { replanning });
		// There is no plan yet, so nothing is known of what it earns.
		expect(result.ok && result.value.kind === 'optimise' && result.value.withoutAnswer).toBe(2);
	});

	it('leaves a plan that is kept as it stands', () => {
		const kept: Workbook = {
			...plant(),
			plans: [
				{
					programme: 'allocation',
					scenario: 'base',
					digest: 'of another day',
					objective: 0,
					kept: '2026-03-01',
					values: [
						{ quantity: 'sold', value: { A: { jan: 100 } } },
						{ quantity: 'made', value: { A: { L1: { jan: 100 } } } }
					]
				}
			]
		};
		expect(ranked(kept).map(([, value]) => value)).toEqual([0, 0]);
	});
});

describe('break-even', () => {
	it('moves demand for the case and for what it is measured against', () => {
		// From 1,100 m of B in February on, the base cannot deliver all; the case gains 1.9 EUR for each metre beyond, until
		// it lacks hours too. 95 EUR are 50 m: 1,150 m.
		const book = plant(withQuantity('outlay', { value: 95 }));
		const result = found(
			book,
			study({
				kind: 'break_even',
				quantity: 'gain',
				scenario: 'more_hours',
				input: { quantity: 'demand', members: ['B', 'feb'], mode: 'set', from: 900, to: 1300 },
				target: 0
			})
		);
		if (result.kind !== 'break_even') throw new Error(result.kind);
		expect(result.crossings.map(({ kind }) => kind)).toEqual(['crosses']);
		expect(result.crossings[0]!.input).toBeCloseTo(1150, 3);
		expect(result.today.value).toBeCloseTo(190 - 95, 4);
		expect(result.curve[0]!.value).toBeCloseTo(-95, 4);
	});
});

describe('a bridge', () => {
	it('splits what the planned scenarios differ by', () => {
		const book = plant((book) => ({
			...book,
			scenarios: book.scenarios.map((scenario) =>
				scenario.id === 'more_hours'
					? {
							...scenario,
							changes: [...scenario.changes, { quantity: 'margin', value: { A: 4 } }]
						}
					: scenario
			)
		}));
		const result = found(
			book,
			study({ kind: 'bridge', quantity: 'contribution', from: 'base', to: 'more_hours' })
		);
		if (result.kind !== 'bridge') throw new Error(result.kind);
		// 1,300 m of A are sold with or without the hours.
		const parts = new Map(result.parts.map(({ label, value }) => [label, value]));
		expect(parts.get('hours')).toBeCloseTo(190, 4);
		expect(parts.get('margin')).toBeCloseTo(1300, 4);
		expect(result.total).toBeCloseTo(1490, 4);
	});
});

describe('what rests on a programme', () => {
	it('is what it decides and what is computed from that, and nothing where it is switched off', () => {
		const of = (quantity: string) =>
			study({ kind: 'bridge', quantity, from: 'base', to: 'more_hours' });
		expect(restsOnProgramme(plant(), of('gain'))).toBe(true);
		expect(restsOnProgramme(plant(), of('outlay'))).toBe(false);
		const off = plant((book) => ({
			...book,
			programmes: book.programmes!.map((programme) => ({ ...programme, off: true as const }))
		}));
		expect(restsOnProgramme(off, of('gain'))).toBe(false);
	});
});

describe('a map and a sensitivity', () => {
	const across = { ...hours, from: 90, to: 110, steps: 3 };
	const down = { quantity: 'margin', members: ['A'], mode: 'add', from: 0, to: 1, steps: 2 };

	it('plan at every point', () => {
		const result = found(
			plant(),
			study({ kind: 'map', quantity: 'contribution', scenario: 'base', across, down })
		);
		if (result.kind !== 'map') throw new Error(result.kind);
		const values = [...result.values].map((value) => Number(value.toFixed(4)));
		expect(values).toEqual([7080, 7270, 7460, 8380, 8570, 8760]);
	});

	it('swing an input with its plan', () => {
		const result = found(
			plant(),
			study({
				kind: 'sensitivity',
				quantity: 'contribution',
				scenario: 'base',
				inputs: [{ ...hours, low: 90, high: 110 }]
			})
		);
		if (result.kind !== 'sensitivity') throw new Error(result.kind);
		expect(result.swings[0]!.atLow.value).toBeCloseTo(7080, 4);
		expect(result.swings[0]!.atHigh.value).toBeCloseTo(7460, 4);
	});

	it('have no answer where no plan fits', () => {
		// 1,000 m of A in January need all 100 h.
		const pinned = plant(withQuantity('made', { value: { A: { L1: { jan: 1000 } } } }));
		const result = found(
			pinned,
			study({ kind: 'map', quantity: 'contribution', scenario: 'base', across, down })
		);
		if (result.kind !== 'map') throw new Error(result.kind);
		expect([...result.states].map((state) => state === OK)).toEqual([
			...[false, true, true],
			...[false, true, true]
		]);
	});

	it('are refused where there is no plan as the scenarios stand', () => {
		const pinned = plant(withQuantity('made', { value: { A: { L1: { jan: 2000 } } } }));
		const result = runStudyHere(
			pinned,
			study({ kind: 'map', quantity: 'contribution', scenario: 'base', across, down }),
			{ replanning }
		);
		expect(result.ok ? '' : result.problem.message).toMatch(
			/As the scenarios stand, there is no plan: .*hours_hold, L1, jan, by 100 h/
		);
	});
});

describe('risk', () => {
	const risk = study({
		kind: 'risk',
		quantity: 'contribution',
		scenario: 'base',
		inputs: [
			{
				...hours,
				label: 'Hours',
				distribution: { kind: 'data', values: [90, 110] }
			}
		],
		draws: 20,
		seed: 1
	});

	it('keeps the plan unless it is asked to follow, and then plans every draw', () => {
		expect(asksForPlans(plant(), risk)).toBe(false);
		const result = found(plant(), { ...risk, plans: 'follow' } as Study);
		if (result.kind !== 'risk') throw new Error(result.kind);
		expect(result.min).toBeCloseTo(7080, 4);
		expect(result.max).toBeCloseTo(7460, 4);
	});
});

describe('a worker of studies', () => {
	const told = async (asked: Study) => {
		let loads = 0;
		const server = new StudyServer(() => {
			loads++;
			return Promise.resolve(replanning.solver);
		});
		const progress: string[] = [];
		let isAnswered = false;
		const finished = await new Promise<FromStudyWorker>((resolve) =>
			server.hear({ kind: 'run', run: 1, source: { workbook: plant() }, study: asked }, (reply) => {
				isAnswered ||= reply.kind === 'early';
				if (reply.kind === 'progress')
					progress.push(`${reply.done}/${reply.of}${isAnswered ? ' too late' : ''}`);
				if (reply.kind === 'finished' || reply.kind === 'failed') resolve(reply);
			})
		);
		return { loads, finished, progress };
	};

	it('reads the solver for a study whose plans follow, and for no other', async () => {
		const follows = await told(combination);
		expect(follows.loads).toBe(1);
		expect(follows.finished).toMatchObject({ kind: 'finished', answer: { ok: true } });
		const keeps = await told({ ...combination, plans: 'keep' } as Study);
		expect(keeps.loads).toBe(0);
		expect(keeps.finished).toMatchObject({ kind: 'finished', answer: { ok: true } });
	});

	it('says how many points are planned, until there is an answer, and nothing where none is', async () => {
		expect((await told(combination)).progress).toEqual(['1/2', '2/2']);
		expect((await told({ ...combination, plans: 'keep' } as Study)).progress).toEqual([]);
	});
});

describe('the mark of what a study stood on', () => {
	it('moves with all that decides the plan', () => {
		const settings = study({
			kind: 'map',
			quantity: 'contribution',
			scenario: 'base',
			across: hours,
			down: hours
		});
		const before = fingerprintOf(plant(), settings);
		// The contribution's own formula reads no hours.
		const fewer = plant(withQuantity('hours', { value: { L1: { jan: 50 } } }));
		expect(fingerprintOf(fewer, settings)).not.toBe(before);
		const retitled = plant((book) => ({
			...book,
			programmes: book.programmes!.map((one) => ({ ...one, title: 'Another title' }))
		}));
		expect(fingerprintOf(retitled, settings)).toBe(before);
	});
});
