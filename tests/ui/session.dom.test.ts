import { describe, expect, it, vi } from 'vitest';
import type { Engine, EngineEvents } from '$lib/browser/engine-client';
import { freeze } from '$lib/engine/frozen';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { Session } from '$lib/ui/session.svelte';
import { base, cheap, shop } from './shop';

/** An engine that answers only when told to. */
class Quiet implements Engine {
	events: EngineEvents;
	opened: { workbook: Workbook; revision: number; order: readonly string[] }[] = [];
	applied: { command: Command; revision: number }[] = [];
	constructor(events: EngineEvents) {
		this.events = events;
	}
	open(workbook: Workbook, revision: number, order: readonly string[]) {
		this.opened.push({ workbook, revision, order });
	}
	apply(command: Command, revision: number) {
		this.applied.push({ command, revision });
	}
	why = () => Promise.resolve(null);
	tryQuantity = () => Promise.reject(new Error('not asked here'));
	lend = () => {};
	close() {}
}

function started() {
	let engine: Quiet | null = null;
	const session = new Session((events) => (engine = new Quiet(events)), 'en');
	session.open(shop);
	return { session, engine: engine as unknown as Quiet };
}
const price = (value: number | null): Command => ({
	kind: 'set_inputs',
	scenario: 'base',
	entries: [{ quantity: 'price', at: [], value }]
});
const priceOf = (session: Session) => inputAt(session.workbook!, 'base', 'price', []).value;

describe('a session', () => {
	it('asks for the base first, then the scenario in hand', () => {
		expect(started().engine.opened[0]?.order).toEqual(['base', 'cheap']);
	});
	it('shows the base before the other scenarios are answered', () => {
		const { session, engine } = started();
		engine.events.onresults(base, 1);
		expect(session.base).toBe(base);
		expect(session.isSettled).toBe(false);
		engine.events.onresults(cheap, 1);
		engine.events.onsettled(1);
		expect(session.isSettled).toBe(true);
	});
	it('shows values that came with the workbook as such, until its engine has answered for every scenario', () => {
		const session = new Session((events) => new Quiet(events), 'en');
		session.open(shop, null, { problems: [], results: [base, cheap], faults: [[], []] });
		expect(session.base).toBe(base);
		expect(session.showsShipped).toBe(true);
		const computed = { ...base, values: base.values.slice() };
		session.onresults(computed, 1);
		expect(session.base).toBe(computed);
		expect(session.showsShipped).toBe(true);
		session.onsettled(1);
		expect(session.showsShipped).toBe(false);
		session.open(shop);
		expect([session.base, session.showsShipped]).toEqual([undefined, false]);
	});
	it('opens the engine once, and sends every edit after that as a command', () => {
		const { session, engine } = started();
		const inCheap: Command = { ...price(0.9), scenario: 'cheap' } as Command;
		const mass = session.layout!.byName.get('mass')!.quantity;
		const study: Command = {
			kind: 'put_study',
			study: {
				...{ kind: 'bridge', name: 'why', title: 'Why' },
				...{ quantity: 'cost', members: ['A15'], from: 'base', to: 'cheap' }
			}
		};
		const header = { title: 'New', parent: 'base', changes: [] };
		const edits: Command[][] = [
			[price(1.9)],
			[price(1.8), inCheap],
			[{ kind: 'set_title', title: 'Another shop' }],
			[{ kind: 'replace_quantity', name: 'mass', quantity: { ...mass, note: 'Weighed.' } }],
			[{ kind: 'add_scenario', index: 2, scenario: { id: 'new', ...header } }],
			[study],
			[{ kind: 'remove_quantity', name: 'night' }]
		];
		for (const edit of edits) expect(session.apply(...edit)).toBeNull();
		for (let i = 0; i < edits.length; i++) session.undo();
		expect(session.workbook).toEqual(shop);
		session.redo();
		session.takeIn({ ...shop, title: 'As others call it' });
		expect(engine.opened).toHaveLength(1);
		expect(engine.applied).toHaveLength(2 * edits.length + 2);
		// What the engine was told leads to what the page has.
		const told = engine.applied.reduce((workbook, { command }) => {
			const result = applyCommand(workbook, command);
			if (!result.ok) throw new Error(result.problem.message);
			return result.workbook;
		}, shop);
		expect(told).toEqual(session.workbook);
		const whole = JSON.stringify(shop).length;
		for (const { command } of engine.applied)
			expect(JSON.stringify(command).length).toBeLessThan(whole / 2);
	});
	it('lays out anew only for an edit that changes cells or formulas', () => {
		const { session } = started();
		const { cells, ordinals } = session.layout!;
		session.apply(price(1.9), { kind: 'set_title', title: 'Another shop' });
		expect(session.layout!.ordinals).toBe(ordinals);
		session.apply({ kind: 'remove_quantity', name: 'night' });
		expect(session.layout!.cells).toBeLessThan(cells);
	});
	it('shows the answers to an edit together, when all are there', () => {
		const { session, engine } = started();
		engine.events.onresults(base, 1);
		engine.events.onresults(cheap, 1);
		engine.events.onsettled(1);
		session.apply(price(1.9));
		const next = { ...base, values: base.values.map((value) => 2 * value) };
		engine.events.onresults(next, 2);
		expect(session.base).toBe(base);
		engine.events.onsettled(2);
		expect(session.base).toBe(next);
		expect(session.results.get('cheap')).toBe(cheap);
	});
	it('opens the workbook as it is now where the engine has lost it', () => {
		const { session, engine } = started();
		session.apply(price(1.9));
		engine.events.onlost();
		expect(engine.opened.map(({ revision }) => revision)).toEqual([1, 2]);
		expect(engine.opened[1]!.workbook).toBe(session.workbook);
	});
	it('takes an edit back and does it again', () => {
		const { session } = started();
		session.apply(price(1.9));
		expect(session.undoable).toMatch(/Resin price/);
		session.undo();
		expect(priceOf(session)).toBe(2.02);
		session.redo();
		expect(priceOf(session)).toBe(1.9);
		expect(session.redoable).toBeNull();
	});
	it('takes several commands as one step, or none of them', () => {
		const { session } = started();
		const inScenario: Command = {
			kind: 'set_inputs',
			scenario: 'cheap',
			entries: [{ quantity: 'price', at: [], value: 0.9 }]
		};
		session.apply(price(1.9), inScenario);
		session.undo();
		expect(session.workbook).toEqual(shop);
		expect(session.apply(price(1.8), { kind: 'remove_scenario', id: 'nobody' })).toMatch(/nobody/);
		expect(priceOf(session)).toBe(2.02);
	});
	it('ignores answers to a layout that is gone', () => {
		const { session, engine } = started();
		session.apply({ kind: 'remove_quantity', name: 'night' });
		engine.events.onresults(base, 1);
		expect(session.base).toBeUndefined();
	});
	it('keeps numbers on screen across a change of structure', () => {
		const { session, engine } = started();
		engine.events.onresults(base, 1);
		session.apply({ kind: 'remove_quantity', name: 'price', also: true });
		const cost = session.layout!.byName.get('cost')!;
		expect(session.base?.values[cost.base]).toBe(0.1212);
	});
	it('refuses to change what can only be read', () => {
		const { session } = started();
		session.readOnly = true;
		expect(session.apply(price(1))).toMatch(/Take over here/);
		expect(priceOf(session)).toBe(2.02);
	});
	it('tells whoever keeps the work of every step, undo included', () => {
		const { session } = started();
		const kept: string[] = [];
		session.onedit = (commands) => kept.push(...commands.map((command) => command.kind));
		session.apply(price(1.9));
		session.undo();
		expect(kept).toEqual(['set_inputs', 'set_inputs']);
	});
});

describe('the view', () => {
	it('starts with two scenarios at most, the first subject and nothing unfolded', () => {
		const { view } = started().session;
		expect(view.shown).toEqual(['cheap']);
		expect(view.subject).toBe('A15');
		expect(view.selectedScenario).toBe('cheap');
	});
	it('starts from what was kept, as far as it is still there', () => {
		const { session } = started();
		session.open(shop, {
			shown: ['gone', 'cheap'],
			selectedScenario: 'gone',
			subject: 'B22',
			open: ['mass']
		});
		expect(session.view.kept).toEqual({
			shown: ['cheap'],
			selectedScenario: 'cheap',
			subject: 'B22',
			open: ['mass'],
			start: null,
			colours: {},
			leftOut: []
		});
		session.open(shop, { leftOut: ['patterns cheap'] });
		expect(session.view.kept.leftOut).toEqual(['patterns cheap']);
	});
	it('lets go of a scenario that is deleted', () => {
		const { session } = started();
		session.apply({ kind: 'remove_scenario', id: 'cheap' });
		expect(session.view.shown).toEqual([]);
		expect(session.view.selectedScenario).toBe('base');
	});

	it('sets a copy beside the workbook in the page alone: shown and named, and no part of what is kept', async () => {
		const { session, engine } = started();
		engine.events.onresults(base, 1);
		engine.events.onresults(cheap, 1);
		engine.events.onsettled(1);
		session.readOnly = true;
		let kept: Workbook | null = null;
		session.onedit = (_, workbook) => (kept = workbook);
		const copy = freeze(session.layout!, base, {
			...{ id: 'earlier', title: 'Revision 3', of: 'Base', date: '2027-11-30' }
		})!;
		session.hold(copy);
		await vi.waitFor(() => expect(session.results.get('earlier')).toBeDefined());
		expect(session.results.get('earlier')!.values).toEqual(base.values);
		expect([session.titleOf('earlier'), session.isCopy('earlier')]).toEqual(['Revision 3', true]);
		expect(session.view.shown).toContain('earlier');
		expect(session.workbook).toBe(shop);
		expect([kept, session.undoable, session.revision]).toEqual([null, null, 1]);
		session.readOnly = false;
		session.apply(price(3));
		expect((kept as Workbook | null)?.frozen).toBeUndefined();
		expect(session.view.shown).toContain('earlier');
		session.letGo('earlier');
		expect(session.view.shown).not.toContain('earlier');
		expect(session.results.has('earlier')).toBe(false);
	});
});
