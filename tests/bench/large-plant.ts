/**
 * A plant of the size that people bring: 60 pipes, 300 items and 12 lines, in the shipped plant's scenarios. It is made
 * from the shipped plant by the commands that its pages send, so it is as sound as what a person would have made; the
 * same seed gives the same plant. What is sold of a pipe is shared out among its copies, and of each among its items.
 */
import { Dice } from '$lib/seeding/dice';
import { beginsWithout } from '$lib/ui/members/begins-without';
import { applyCommand, type Command, type InputEntry } from '$lib/workbook/commands';
import { baseOf, findQuantity, findSet } from '$lib/workbook/lookup';
import type { Scalar, Workbook } from '$lib/workbook/schema';
import { flatten, valueAt } from '$lib/workbook/values';
import { copyId } from './grow';
import { openShipped } from './shipped';

const COPIES_OF_A_PIPE = 6;
const ITEMS_OF_A_PIPE = 5;
const MORE_LINES = ['L2', 'L3', 'L4', 'L5'];
const MORE_REWINDERS = ['R1', 'R2'];
/** Eleven lines in use where there were seven, and not quite as full. */
const MORE_METRES = 1.4;
const SHARE = MORE_METRES / COPIES_OF_A_PIPE;
const LENGTHS = [25, 50, 100, 120, 200];

/** Without plans: they are made for it. */
export function largePlant(seed = 1): Workbook {
	const dice = new Dice(seed);
	const shipped = openShipped();
	const wider = withCopies(
		withCopies(shipped, 'line', MORE_LINES, 'L'),
		'rewinder',
		MORE_REWINDERS,
		'R'
	);
	const pipes = withPipes(wider);
	const items = withItems(pipes, dice);
	return applied(items, [
		...pricesOfPipes(items, dice),
		...placesInRounds(items),
		...sharedOut(items),
		withoutPlans(items)
	]);
}

/** L9 for the first copy where there are eight lines. */
function withCopies(
	workbook: Workbook,
	set: string,
	like: readonly string[],
	letter: string
): Workbook {
	const count = membersOf(workbook, set).length;
	return applied(
		workbook,
		like.map((one, at) => ({
			kind: 'add_member',
			set,
			index: count + at,
			member: { id: `${letter}${count + at + 1}` },
			like: one
		}))
	);
}

/** A copy runs where its original runs, in the same shares, and has no metres and no bookings yet. */
function withPipes(workbook: Workbook): Workbook {
	const pipes = membersOf(workbook, 'product');
	const copied = Array.from({ length: COPIES_OF_A_PIPE - 1 }, (_, at) => at + 2).flatMap((copy) =>
		pipes.map((like) => ({ set: 'product', like, id: copyId(like, copy) }))
	);
	const weights = flatten(findQuantity(workbook, 'line_weight')?.value);
	return applied(workbook, [
		...copied.map(({ set, like, id }, at): Command => ({
			kind: 'add_member',
			set,
			index: pipes.length + at,
			member: { id },
			like
		})),
		...copied.flatMap((one) => beginsWithout(workbook, one)),
		entered(
			workbook,
			copied.flatMap(({ like, id }) =>
				weights
					.filter(({ at }) => at[0] === like)
					.map(({ at, value }) => ({ quantity: 'line_weight', at: [id, at[1] ?? ''], value }))
			)
		)
	]);
}

/** Five of each pipe, the shipped ones among them; each like an item of the pipe that its own was copied from. */
function withItems(workbook: Workbook, dice: Dice): Workbook {
	const before = membersOf(workbook, 'item');
	const pipeOf = findQuantity(workbook, 'pipe_of_item')?.value;
	const demand = findQuantity(workbook, 'item_demand')?.value;
	const added: Command[] = [];
	const entries: InputEntry[] = [];
	for (const pipe of membersOf(workbook, 'product')) {
		const original = pipe.replace(/_\d+$/, '');
		const patterns = before.filter((item) => valueAt(pipeOf, [item]) === original);
		const own = pipe === original ? patterns : [];
		const metres = patterns.reduce((sum, item) => sum + Number(valueAt(demand, [item])), 0);
		const items = Array.from(
			{ length: ITEMS_OF_A_PIPE },
			(_, at) => own[at] ?? `${pipe}-${at + 1}`
		);
		const weights = items.map(() => 0.5 + dice.next());
		const all = weights.reduce((sum, weight) => sum + weight, 0);
		items.forEach((item, at) => {
			const metresOfItem = Math.round((metres * SHARE * weights[at]!) / all / 1000) * 1000;
			entries.push({ quantity: 'item_demand', at: [item], value: metresOfItem });
			if (own.includes(item)) return;
			const like = patterns[at % patterns.length];
			const index = before.length + added.length;
			added.push({
				...{ kind: 'add_member', set: 'item', index, member: { id: item } },
				...(like !== undefined && { like })
			});
			entries.push(
				{ quantity: 'pipe_of_item', at: [item], value: pipe },
				{ quantity: 'length_of_item', at: [item], value: LENGTHS[at] ?? 100 }
			);
		});
	}
	return applied(workbook, [...added, entered(workbook, entries)]);
}

/** Copies that cost the same to the last digit would be one pipe to a plan. */
function pricesOfPipes(workbook: Workbook, dice: Dice): Command[] {
	const pipes = membersOf(workbook, 'product').filter((pipe) => pipe.includes('_'));
	return [
		entered(
			workbook,
			pipes.flatMap((pipe) => {
				const ratio = 0.97 + 0.06 * dice.next();
				return ['price', 'list_price'].map((quantity) => ({
					...{ quantity, at: [pipe] },
					value: scaled(valueAt(findQuantity(workbook, quantity)?.value, [pipe]), ratio, 1e4)
				}));
			})
		)
	];
}

/** Every pipe has a place of its own in the round of each line. */
function placesInRounds(workbook: Workbook): Command[] {
	const places = new Map<string, number>();
	const runs = workbook.relations?.find(({ name }) => name === 'runs')?.pairs ?? [];
	return [
		entered(
			workbook,
			runs.map((pair) => {
				const line = pair[1] ?? '';
				const value = (places.get(line) ?? 0) + 1;
				places.set(line, value);
				return { quantity: 'campaign_order', at: pair, value };
			})
		)
	];
}

/** Room in store goes with the metres, and so does what a contract asks for. */
function sharedOut(workbook: Workbook): Command[] {
	return [
		entered(
			workbook,
			['stock_max', 'contract_minimum'].flatMap((quantity) =>
				flatten(findQuantity(workbook, quantity)?.value).map(({ at, value }) => ({
					...{ quantity, at },
					value: scaled(value, SHARE, 1)
				}))
			)
		)
	];
}

const withoutPlans = (workbook: Workbook): Command => ({
	kind: 'set_plans',
	plans: (workbook.plans ?? []).map(({ programme, scenario }) => ({ programme, scenario }))
});

const scaled = (value: Scalar | undefined, ratio: number, steps: number): Scalar =>
	typeof value === 'number' ? Math.round(value * ratio * steps) / steps : (value ?? null);

const entered = (workbook: Workbook, entries: readonly InputEntry[]): Command => ({
	kind: 'set_inputs',
	scenario: baseOf(workbook).id,
	entries
});

const membersOf = (workbook: Workbook, set: string): string[] =>
	(findSet(workbook, set)?.members ?? []).map(({ id }) => id);

function applied(workbook: Workbook, commands: readonly Command[]): Workbook {
	const result = applyCommand(workbook, { kind: 'several', commands });
	if (!result.ok) throw new Error(result.problem.message);
	return result.workbook;
}
