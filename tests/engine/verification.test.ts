/** When the second engine is asked, what is handed to it, and for which edit its answer stands. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FromVerifier, ToEngine, ToVerifier } from '$lib/browser/engine-messages';
import { Handover } from '$lib/browser/handover';
import { Verification } from '$lib/browser/verification';
import { Model } from '$lib/engine/model';
import type { Agreement } from '$lib/engine/results';
import type { Command } from '$lib/workbook/commands';
import { scenario, shop } from './model-shop';

const AGREED: Agreement = {
	...{ compared: 9, agreeing: 9, notCompared: [], sample: null, disagreements: [], busy: false }
};

function office() {
	const asked: ToEngine[] = [];
	const told: ToVerifier[] = [];
	const heard: [number, number][] = [];
	let answer: (message: FromVerifier) => void = () => {};
	let started = 0;
	const verification = new Verification(
		(message) => asked.push(message),
		({ onmessage }) => {
			started++;
			answer = onmessage;
			return { post: (message) => told.push(message), terminate: () => {} };
		},
		{
			onagreement: ({ compared }, revision) => heard.push([compared, revision]),
			onfailed: () => {}
		}
	);
	const agree = (revision: number) => answer({ kind: 'agreement', revision, agreement: AGREED });
	const checks = () => asked.flatMap((message) => (message.kind === 'check' ? message : []));
	return { verification, checks, told, heard, agree, started: () => started };
}

describe('the second engine', () => {
	beforeEach(() => void vi.useFakeTimers());
	afterEach(() => void vi.useRealTimers());

	it('is started, and builds, after three quiet seconds; an edit begins them anew', () => {
		const { verification, checks, started } = office();
		verification.settled(1, 1);
		vi.advanceTimersByTime(2900);
		verification.edited();
		vi.advanceTimersByTime(2900);
		expect(started()).toBe(0);
		verification.settled(2, 1);
		vi.advanceTimersByTime(3000);
		expect([started(), checks()]).toEqual([1, [{ kind: 'check', revision: 2 }]]);
		verification.close();
	});

	it('follows an edit of values soon, and builds for another plan after the long quiet', () => {
		const { verification, checks, told } = office();
		verification.settled(1, 1);
		vi.advanceTimersByTime(3000);
		verification.settled(2, 1);
		vi.advanceTimersByTime(200);
		expect(checks().map(({ revision }) => revision)).toEqual([1, 2]);
		verification.settled(3, 2);
		expect(told.at(-1)).toEqual({ kind: 'stop' });
		vi.advanceTimersByTime(2900);
		expect(checks()).toHaveLength(2);
		vi.advanceTimersByTime(100);
		expect(checks()).toHaveLength(3);
		verification.close();
	});

	it('answers for later edits too where nothing was new to it', () => {
		const { verification, heard, agree } = office();
		verification.settled(1, 1);
		vi.advanceTimersByTime(3000);
		verification.handed(1, true);
		verification.handed(2, false);
		agree(1);
		verification.handed(3, false);
		verification.handed(4, true);
		agree(1);
		agree(4);
		expect(heard).toEqual([
			[9, 2],
			[9, 3],
			[9, 4]
		]);
		verification.close();
	});
});

describe('what is handed to the second engine', () => {
	const opened = () => {
		const model = Model.open(shop([scenario('faster', 'base', { speed: { L1: 20 } })]));
		const handover = new Handover();
		let revision = 1;
		const after = (...commands: Command[]) => {
			for (const command of commands) {
				const before = model.workbook;
				const applied = model.apply(command);
				if (!applied.ok) throw new Error(applied.problem.message);
				handover.note(command, applied, before, model.workbook);
			}
			return handover.next(model, ++revision);
		};
		return { model, after };
	};
	const price: Command = {
		kind: 'set_inputs',
		scenario: 'base',
		entries: [{ quantity: 'price', at: ['red'], value: 9 }]
	};

	it('is the plan once, then the commands alone, with what the first engine found', () => {
		const { model, after } = opened();
		expect(after()!.fresh!.workbook).toBe(model.workbook);
		const check = after(price);
		expect(check).toMatchObject({ fresh: null, commands: [price] });
		expect(check!.results).toEqual(['base', 'faster'].map((id) => model.results(id)));
	});

	it('is nothing for an edit of words, which goes along with the next edit of values', () => {
		const { after } = opened();
		after();
		const title: Command = { kind: 'set_title', title: 'Another' };
		expect(after(title)).toBeNull();
		expect(after(price)!.commands).toEqual([title, price]);
	});

	it('is no new plan for a scenario that comes or goes', () => {
		const { after } = opened();
		after();
		const check = after({ kind: 'remove_scenario', id: 'faster' });
		expect(check).toMatchObject({ fresh: null });
		expect(check!.results.map(({ scenario }) => scenario)).toEqual(['base']);
	});

	it('is the plan anew after an edit of a formula', () => {
		const { model, after } = opened();
		after();
		const { quantity } = model.layout.byName.get('metres')!;
		const check = after({
			kind: 'replace_quantity',
			name: 'metres',
			quantity: { ...quantity, formula: 'speed * hours * 2' }
		});
		expect(check!.commands).toEqual([]);
		expect(check!.fresh!.plan.nodes).toBe(model.plan.nodes);
	});
});
