/**
 * Several desks on one server that loses requests and answers, with edits at any moment and tabs that are
 * killed: nothing that was done is lost, and all end with the same workbook.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	Sync,
	type Link,
	type Remote,
	type RemoteSaved,
	type SyncState
} from '$lib/browser/sync/sync';
import { applyCommand } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import { mergeWorkbooks, type Conflict, type Side } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import shop from '../../scenarios/one-line-shop.json?raw';

const loaded = loadWorkbook(shop, 'shop.json');
if (!loaded.ok) throw new Error(loaded.problem.line);
const first = loaded.workbook;
/** Inputs that are one number. */
const NAMES = first.sheets
	.flatMap(({ quantities }) => quantities)
	.filter(({ formula, type, per, fixed }) => !formula && !type && !per?.length && !fixed)
	.map(({ name }) => name);

function withValue(workbook: Workbook, quantity: string, value: number): Workbook {
	const result = applyCommand(workbook, {
		kind: 'set_inputs',
		scenario: 'base',
		entries: [{ quantity, at: [], value }]
	});
	if (!result.ok) throw new Error(result.problem.message);
	return result.workbook;
}
const valueIn = (workbook: Workbook, name: string) => inputAt(workbook, 'base', name, []).value;
const again = (workbook: Workbook) => {
	const result = loadWorkbook(saveWorkbook(workbook), 'copy.json');
	if (!result.ok) throw new Error(result.problem.line);
	return result.workbook;
};

/** Saves as the server does: merged with what is newest, or a conflict. */
class Server implements Remote {
	readonly revisions: Workbook[] = [first];
	/** What happens to the next requests: they arrive, or the request or its answer is lost. */
	weather: ('fine' | 'request' | 'answer')[] = [];

	get number() {
		return this.revisions.length;
	}
	get newest() {
		return this.revisions.at(-1)!;
	}
	async read() {
		await this.#travel('request');
		return { number: this.number, workbook: again(this.newest) };
	}
	async revision(_id: string, number: number) {
		await this.#travel('request');
		return again(this.revisions[number - 1]!);
	}
	async save(link: Link, workbook: Workbook): Promise<RemoteSaved> {
		const sent = again(workbook);
		const fate = this.weather.shift() ?? 'fine';
		await Promise.resolve();
		if (fate === 'request') throw new Error('lost on the way');
		const base = this.revisions[link.number - 1]!;
		const merged = mergeWorkbooks({ base, mine: sent, theirs: this.newest });
		const conflict = merged.conflicts.length > 0;
		if (!conflict && saveWorkbook(merged.workbook) !== saveWorkbook(this.newest))
			this.revisions.push(again(merged.workbook));
		if (fate === 'answer') throw new Error('the answer was lost');
		const answer = { number: this.number, workbook: again(this.newest) };
		await Promise.resolve();
		return conflict ? { kind: 'conflict', ...answer } : { kind: 'saved', ...answer };
	}
	async #travel(lost: 'request') {
		await Promise.resolve();
		if (this.weather.shift() === lost) throw new Error('lost on the way');
	}
}

class Person {
	workbook: Workbook;
	kept: { workbook: Workbook; link: Link };
	sync: Sync;
	state: SyncState = { is: 'in_step' };
	asked: Conflict[] = [];
	readonly written: number[] = [];

	constructor(
		readonly server: Server,
		/** What this person says to every conflict. */
		readonly side: Side
	) {
		this.workbook = server.newest;
		this.kept = {
			workbook: this.workbook,
			link: { id: 'w', number: server.number, base: this.workbook }
		};
		this.sync = this.#start(this.kept.link);
	}
	/** Written down at once, as commands are. */
	edit(name: string, value: number) {
		this.written.push(value);
		this.workbook = withValue(this.workbook, name, value);
		this.kept = { ...this.kept, workbook: this.workbook };
	}
	/** The tab goes, and comes back with what was written down. */
	kill() {
		this.sync.close();
		this.workbook = again(this.kept.workbook);
		const { link } = this.kept;
		this.sync = this.#start({ ...link, base: again(link.base) });
	}
	async settle() {
		await this.sync.step();
		for (let round = 0; this.state.is === 'asking'; round++) {
			if (round > 50) throw new Error('asked without end');
			this.asked.push(...this.state.conflicts);
			await this.sync.answer(new Map(this.state.conflicts.map(({ key }) => [key, this.side])));
		}
	}
	#start(link: Link) {
		const { server } = this;
		return new Sync(
			server,
			{
				workbook: () => this.workbook,
				take: async (workbook) => {
					this.workbook = workbook;
					this.kept = { ...this.kept, workbook };
					await Promise.resolve();
				},
				keepLink: async (kept) => {
					await Promise.resolve();
					this.kept = { ...this.kept, link: kept };
				}
			},
			link,
			(state) => (this.state = state)
		);
	}
}

describe('two desks', () => {
	const both = () => {
		const server = new Server();
		return { server, ann: new Person(server, 'mine'), bob: new Person(server, 'theirs') };
	};
	const [one, other] = NAMES as [string, string];

	it('have enough to edit', () => {
		expect(NAMES.length).toBeGreaterThan(4);
	});

	it('that change different values end with both, each as one revision', async () => {
		const { server, ann, bob } = both();
		ann.edit(one, 41);
		bob.edit(other, 42);
		await Promise.all([ann.settle(), bob.settle()]);
		await ann.sync.step();
		ann.sync.tell(server.number);
		await ann.settle();
		for (const { workbook } of [ann, bob])
			expect([valueIn(workbook, one), valueIn(workbook, other)]).toEqual([41, 42]);
		expect(server.number).toBe(3);
		expect(ann.state).toEqual({ is: 'in_step' });
	});

	it('that change the same value are asked, with both values', async () => {
		const { server, ann, bob } = both();
		ann.edit(one, 41);
		await ann.settle();
		bob.edit(one, 42);
		await bob.sync.step();
		expect(bob.state).toMatchObject({
			is: 'asking',
			conflicts: [{ reason: 'both_changed', mine: 42, theirs: 41 }]
		});
		expect(valueIn(bob.workbook, one)).toBe(42);
		expect(valueIn(server.newest, one)).toBe(41);
		await bob.settle();
		expect(valueIn(bob.workbook, one)).toBe(41);
	});

	it('keep what is typed while a save is on its way', async () => {
		const { server, ann, bob } = both();
		bob.edit(other, 42);
		await bob.settle();
		ann.edit(one, 41);
		const sending = ann.sync.step();
		ann.edit(one, 43);
		await sending;
		await ann.settle();
		expect([valueIn(ann.workbook, one), valueIn(ann.workbook, other)]).toEqual([43, 42]);
		expect(valueIn(server.newest, one)).toBe(43);
	});

	it('keep an answer while another question comes in, and ask again where the versions are others', async () => {
		const { server, ann, bob } = both();
		ann.edit(one, 41);
		ann.edit(other, 51);
		bob.edit(one, 42);
		await bob.settle();
		await ann.sync.step();
		server.weather = ['request'];
		const [asked] = ann.state.is === 'asking' ? ann.state.conflicts : [];
		await ann.sync.answer(new Map([[asked!.key, 'mine']]));
		expect(ann.state).toEqual({ is: 'offline' });
		bob.edit(other, 52);
		await bob.settle();
		await ann.sync.step();
		expect(ann.state.is === 'asking' && ann.state.conflicts.map(({ mine }) => mine)).toEqual([51]);
		bob.edit(one, 43);
		await bob.settle();
		await ann.settle();
		expect(ann.asked.map(({ mine, theirs }) => [mine, theirs])).toContainEqual([41, 43]);
		expect([valueIn(server.newest, one), valueIn(server.newest, other)]).toEqual([41, 51]);
	});

	it('send no plan that follows from the rest of its own accord, but with the next edit', async () => {
		const { server, ann } = both();
		const replan = (digest: string) => {
			const [plan, ...others] = ann.workbook.plans!;
			ann.workbook = { ...ann.workbook, plans: [{ ...plan!, digest }, ...others] };
		};
		replan('anew');
		await ann.settle();
		expect(ann.sync.ahead).toBe(false);
		expect(server.number).toBe(1);
		ann.edit(one, 41);
		await ann.settle();
		expect(server.number).toBe(2);
		expect(server.newest.plans![0]!.digest).toBe('anew');
		replan('again');
		await ann.settle();
		expect(server.number).toBe(2);
	});

	it('send once more what got no answer, and it is saved once', async () => {
		const { server, ann } = both();
		server.weather = ['answer'];
		ann.edit(one, 41);
		await ann.sync.step();
		expect(ann.state).toEqual({ is: 'offline' });
		await ann.sync.step();
		expect(ann.state).toEqual({ is: 'in_step' });
		expect(server.number).toBe(2);
	});

	it('are not asked about a save of their own that got no answer', async () => {
		const { server, ann } = both();
		server.weather = ['answer'];
		ann.edit(one, 41);
		await ann.sync.step();
		ann.edit(one, 42);
		ann.kill();
		await ann.settle();
		expect(ann.asked).toEqual([]);
		expect(valueIn(server.newest, one)).toBe(42);
	});

	it('can take back what was sent without an answer', async () => {
		const { server, ann, bob } = both();
		const before = valueIn(server.newest, one);
		server.weather = ['answer'];
		ann.edit(one, 41);
		await ann.sync.step();
		// Another save lies above the one that got no answer.
		bob.edit(other, 43);
		await bob.settle();
		ann.edit(one, before as number);
		await ann.settle();
		expect(ann.asked).toEqual([]);
		expect(valueIn(server.newest, one)).toBe(before);
		expect(valueIn(server.newest, other)).toBe(43);
	});
});

const stepArbitrary = (people: number) =>
	fc.oneof(
		{
			weight: 5,
			arbitrary: fc.record({
				do: fc.constant('edit' as const),
				who: fc.nat(people - 1),
				name: fc.nat(3)
			})
		},
		{
			weight: 4,
			arbitrary: fc.record({ do: fc.constant('step' as const), who: fc.nat(people - 1) })
		},
		{
			weight: 1,
			arbitrary: fc.record({ do: fc.constant('kill' as const), who: fc.nat(people - 1) })
		},
		{
			weight: 2,
			arbitrary: fc.record({
				do: fc.constant('lose' as const),
				what: fc.constantFrom('request' as const, 'answer' as const)
			})
		},
		{ weight: 2, arbitrary: fc.constant({ do: 'wait' as const }) }
	);

describe('any interleaving', () => {
	it('loses nothing: different values all arrive, and all desks end alike', async () => {
		await fc.assert(
			fc.asyncProperty(fc.array(stepArbitrary(3), { maxLength: 40 }), async (steps) => {
				const server = new Server();
				const people = [0, 1, 2].map(() => new Person(server, 'mine'));
				const last = new Map<string, number>();
				let value = 100;
				for (const step of steps) {
					if (step.do === 'edit') {
						// Values of their own for each: nothing is to be asked.
						const name = NAMES[step.who + 3 * (step.name % Math.floor(NAMES.length / 3))]!;
						people[step.who]!.edit(name, ++value);
						last.set(name, value);
					} else if (step.do === 'step') void people[step.who]!.sync.step();
					else if (step.do === 'kill') people[step.who]!.kill();
					else if (step.do === 'lose') server.weather.push(step.what);
					else await Promise.resolve();
				}
				await settleAll(server, people);
				for (const person of people) {
					// A save that was under way when its tab was killed may arrive late: then a person is asked
					// between two values of their own, and about nobody else's.
					for (const { theirs } of person.asked) expect(person.written).toContain(theirs);
					for (const [name, expected] of last)
						expect(valueIn(person.workbook, name)).toBe(expected);
					expect(saveWorkbook(person.workbook)).toBe(saveWorkbook(server.newest));
				}
			}),
			{ numRuns: 60 }
		);
	});

	it('of the same values each stands somewhere: in a revision, or before the person who was asked', async () => {
		await fc.assert(
			fc.asyncProperty(fc.array(stepArbitrary(3), { maxLength: 30 }), async (steps) => {
				const server = new Server();
				const people = (['mine', 'theirs', 'mine'] as const).map(
					(side) => new Person(server, side)
				);
				/** Written, and not written over by the same person. */
				const standing = people.map(() => new Map<string, number>());
				let value = 100;
				for (const step of steps) {
					if (step.do === 'edit') {
						const name = NAMES[step.name]!;
						people[step.who]!.edit(name, ++value);
						standing[step.who]!.set(name, value);
					} else if (step.do === 'step') void people[step.who]!.sync.step();
					else if (step.do === 'lose') server.weather.push(step.what);
					else await Promise.resolve();
				}
				await settleAll(server, people);
				const texts = people.map(({ workbook }) => saveWorkbook(workbook));
				expect(new Set([...texts, saveWorkbook(server.newest)]).size).toBe(1);
				standing.forEach((values, who) => {
					for (const [name, written] of values) {
						const saved = server.revisions.some((revision) => valueIn(revision, name) === written);
						const asked = people[who]!.asked.some(({ mine }) => mine === written);
						expect(saved || asked).toBe(true);
					}
				});
			}),
			{ numRuns: 60 }
		);
	});
});

/** The weather clears, and everybody gets in step until nobody has anything left. */
async function settleAll(server: Server, people: readonly Person[]) {
	server.weather = [];
	for (let before = -1; before !== server.number;) {
		before = server.number;
		for (const person of people) {
			person.sync.tell(server.number);
			await person.settle();
		}
	}
	for (const person of people) {
		person.sync.tell(server.number);
		await person.settle();
	}
}
