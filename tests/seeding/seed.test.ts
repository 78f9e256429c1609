/** Faults seeded into the small shop: the same for the same seed, each as a person makes it, the workbook left sound. */
import { beforeAll, describe, expect, it } from 'vitest';
import { followPlans } from '../../src/cli/follow-plans';
import { CLASS_NAMES, type FaultClass } from '$lib/seeding/fault';
import { Judge, type Verdict } from '$lib/seeding/judge';
import { seedFaults } from '$lib/seeding/seed';
import { suggestions, withSuggestions } from '$lib/review/suggest';
import { applyCommand } from '$lib/workbook/commands';
import { enter, openShipped, read } from '../reference/shipped';

const { workbook: shipped } = openShipped('shop');
const accepted = applyCommand(shipped, withSuggestions(suggestions(shipped)));
if (!accepted.ok) throw new Error(accepted.problem.message);
const shop = accepted.workbook;

const run = async (seed: number, faults: number, meant = 0) => {
	const plans = await followPlans(shop);
	const verdicts = [...seedFaults(shop, { faults, meant, seed, follow: plans?.follow })];
	plans?.dispose();
	return verdicts;
};
const plain = (verdicts: readonly Verdict[]) =>
	verdicts.map(({ fault, means, inert }) => [
		fault.class,
		fault.quantity,
		fault.what,
		means,
		inert
	]);

describe('seeded faults', () => {
	let verdicts: Verdict[];
	beforeAll(async () => {
		verdicts = await run(1, 90, 40);
	});

	it('are the same for the same seed, and others for another', async () => {
		expect(plain(await run(7, 12))).toEqual(plain(await run(7, 12)));
		expect(plain(await run(8, 12))).not.toEqual(plain(await run(7, 12)));
	});

	it('are of every class', () => {
		const classes = verdicts.flatMap(({ fault }) => fault.class ?? []);
		expect(classes).toHaveLength(90);
		expect(new Set<FaultClass>(classes)).toEqual(new Set(CLASS_NAMES));
	});

	it('are noticed in the shop in at least seven of ten cases, and edits that are meant raise no alarm', () => {
		const seeded = verdicts.filter(({ fault }) => fault.class !== null);
		const judged = seeded.filter(
			({ inert, means }) => !inert || means === 'refused' || means === 'range'
		);
		const passed = judged.filter(({ means }) => means === null);
		expect(passed.length / judged.length).toBeLessThan(0.3);
		const meant = verdicts.filter(({ fault }) => fault.class === null);
		expect(meant).toHaveLength(40);
		expect(
			meant.filter(({ means }) => means !== null && means !== 'jump').map(({ fault }) => fault.what)
		).toEqual([]);
	});
});

describe('what becomes of one edit', () => {
	const judge = new Judge(openShipped('shop'), null);
	const entry = (quantity: string, value: number, ...at: string[]) =>
		judge.judge({
			...{ class: 'magnitude', quantity, what: '' },
			edit: { kind: 'set_inputs', scenario: 'base', entries: [{ quantity, at, value }] }
		});
	const formula = (name: string, text: string) => {
		const quantity = shipped.sheets
			.flatMap(({ quantities }) => quantities)
			.find((one) => one.name === name)!;
		const edit = {
			kind: 'replace_quantity',
			name,
			quantity: { ...quantity, formula: text }
		} as const;
		return judge.judge({ class: 'operator', quantity: name, what: '', edit });
	};

	it.each([
		['range', () => entry('availability', 880)],
		['refused', () => formula('labour', 'posts + shifts')],
		['error', () => formula('net_hours', '(shifts - shifts) * 8[h/shift] * working_days')],
		['check', () => formula('npv', '-cumulative_discounted_cash[y6]')],
		[
			'review',
			() => formula('wall_set_point', 'wall_minimum + eccentricity + 2 * spread_of_mean_wall')
		],
		['caution', () => entry('overheads', 2_100_000)],
		['jump', () => entry('overheads', 420_000)]
	] as const)('is met by: %s', (means, verdict) => {
		expect(verdict()).toMatchObject({ means, inert: false });
	});

	it('is met where a scenario pays for what is forgotten in it', async () => {
		const plans = await followPlans(shipped);
		const following = new Judge(openShipped('shop'), plans!.follow);
		const edit = {
			kind: 'set_inputs',
			scenario: 'second_shift',
			entries: [{ quantity: 'shifts', at: [] }]
		} as const;
		const verdict = following.judge({ class: 'omission', quantity: 'shifts', what: '', edit });
		plans!.dispose();
		expect(verdict).toMatchObject({ means: 'check', by: 'second_shift outlay_gains ' });
	});

	it('names what speaks', () => {
		expect(entry('overheads', 2_100_000).by).toBe('usual base overheads ');
		expect(formula('npv', '-cumulative_discounted_cash[y6]').by).toContain('npv');
		expect(entry('overheads', 211_000).by).toBeNull();
	});

	it('tells what moves most, and by how much', () => {
		// Overheads are a part of the factory cost; the payback is of gains, which they leave alone.
		const { effect } = entry('overheads', 231_000);
		expect(effect?.result).toMatch(/^cost_per_metre/);
		expect(effect!.by).toBeGreaterThan(0.02);
	});

	it('is inert where no result moves', () => {
		expect(formula('unmet_demand', 'MAX(demand - good_metres; 0)')).toMatchObject({
			...{ inert: true, effect: null }
		});
	});

	it('holds a new scenario against the one above it: what that says already is nothing new', () => {
		const scenario = { id: 'more', title: 'More', parent: 'second_shift', changes: [] };
		const change = (value: number) =>
			judge.judge({
				...{ class: null, quantity: 'overheads', what: '' },
				edit: {
					kind: 'several',
					commands: [
						{ kind: 'add_scenario', index: 2, scenario },
						{
							...{ kind: 'set_inputs', scenario: 'more' },
							entries: [{ quantity: 'overheads', at: [], value }]
						}
					]
				}
			});
		expect(change(215_000).means).toBeNull();
		expect(change(2_100_000).means).toBe('caution');
	});

	it('holds a copied member against the one it was copied from in the same way', () => {
		const model = openShipped('shop');
		enter(model, ['price', ['R16'], 0.15]);
		expect(read(model, 'sold_below_cost', 'R16')).toBe(1);
		const copied = new Judge(model, null).judge({
			...{ class: null, quantity: 'product', what: '' },
			edit: {
				...{ kind: 'add_member', set: 'product', index: 2, like: 'R16' },
				member: { id: 'R16_2' }
			}
		});
		expect(copied).toMatchObject({ means: null });
	});

	it('leaves the sound workbook as it was', () => {
		const before = entry('overheads', 231_000);
		entry('scrap', 40, 'R16');
		expect(entry('overheads', 231_000)).toEqual(before);
	});
});
