/** The look before anything is entered: what is doubted, unknown, missing, refused; and what is entered then. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { acceptedChanges, acceptedCommands, changeKey, lookOver } from '$lib/exchange/table/look';
import {
	NO_CHOICES,
	unknownKey,
	type Decision,
	type MemberChoices
} from '$lib/exchange/table/new-members';
import {
	NONE_TYPICAL,
	typicalEntries,
	typicalKey,
	type TypicalEntries
} from '$lib/exchange/table/implausible';
import { mineTick, ownQuantities } from '$lib/review/template';
import { findQuantity } from '$lib/workbook/lookup';
import { proposeMapping } from '$lib/exchange/table/propose';
import { applyCommand } from '$lib/workbook/commands';
import { inputAt } from '$lib/workbook/scenario';
import { layOut } from '$lib/engine/layout';
import type { Workbook } from '$lib/workbook/schema';
import { openShipped } from '../../reference/shipped';

const { workbook, layout } = openShipped('marram');
const openWith = (added: Workbook) => layOut(added);
const listPrice = (product: string, of = workbook) =>
	Number(inputAt(of, 'base', 'list_price', [product]).value);

function look(
	text: string,
	choices: Partial<MemberChoices> = {},
	typical: TypicalEntries = NONE_TYPICAL
) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	const looked = lookOver(
		read.grid,
		proposeMapping(read.grid, workbook),
		{ ...NO_CHOICES, ...choices },
		layout,
		undefined,
		undefined,
		typical
	);
	if (!looked.ok) throw new Error(looked.message);
	return looked.look;
}
const lines = ({ problems }: ReturnType<typeof look>) =>
	problems.map(({ line, column, message }) => [line, column, message]);

describe('several quantities in one file', () => {
	it('come in together and go back in one step', () => {
		const seen = look(
			'Product;List price (EUR/100 m);Shelf;Colour\nPX15B;52,40;40;white\nPX22B;95,10;;grey\n'
		);
		expect(lines(seen)).toEqual([]);
		expect(seen.leftOut).toEqual(['Shelf', 'Colour']);
		expect(seen.changes.map(({ quantity, at, after }) => [quantity.name, at, after])).toEqual([
			['list_price', ['PX15B'], 0.524],
			['list_price', ['PX22B'], 0.951]
		]);
		const done = applyCommand(workbook, {
			kind: 'several',
			commands: acceptedCommands(seen, new Set(seen.changes.map(changeKey)))
		});
		if (!done.ok) throw new Error(done.problem.message);
		expect(listPrice('PX22B', done.workbook)).toBe(0.951);
		expect(applyCommand(done.workbook, done.inverse)).toMatchObject({ workbook });
	});

	it('say of no column of members that it is left out while another is asked about', () => {
		expect(look('Product;price;Shelf\nPX15B;35,10;40\n').leftOut).toEqual(['Shelf']);
	});

	it('take the unit of each row for the columns before it', () => {
		const seen = look(
			'product;List price;unit;Outside diameter;unit\nPX15B;52,40;EUR/(100 m);1,51;cm\nPX22B;0,951;EUR/m;22,2;mm\n'
		);
		expect(lines(seen)).toEqual([]);
		expect(seen.changes.map(({ after }) => after)).toEqual([0.524, 15.1, 0.951, 22.2]);
	});

	it('take a column of currencies for less than what the heading says', () => {
		const seen = look('product;List price (EUR/100 m);currency\nPX15B;52,40;EUR\n');
		expect(lines(seen)).toEqual([]);
		expect(seen.changes.map(({ after }) => after)).toEqual([0.524]);
	});

	it('take "26,90 €" for what the heading says it is by', () => {
		const seen = look('product;List price (EUR/100 m)\nPX15B;52,40 €\n');
		expect(seen.changes.map(({ after }) => after)).toEqual([0.524]);
	});
});

describe('a line for each that cannot be taken', () => {
	it('names row, column, what is wrong and what to do', () => {
		const seen = look(
			[
				'product;List price (EUR/100 m);Outside diameter',
				'PX15B;52,40;15,1',
				'PX15B;53,00;15,2',
				'PX99;50;15',
				'PX22B;9.51;22 kg',
				';50;15',
				'PB10B;-3;many'
			].join('\n')
		);
		expect(lines(seen)).toEqual([
			[
				3,
				'"List price (EUR/100 m)"',
				'List price of PX15B is given on line 2 already. Keep one of the two.'
			],
			[
				3,
				'"Outside diameter"',
				'Outside diameter of PX15B is given on line 2 already. Keep one of the two.'
			],
			[4, null, expect.stringMatching(/^There is no product "PX99"/)],
			[
				5,
				'"List price (EUR/100 m)"',
				expect.stringContaining('has a point before its decimals, and this column a comma')
			],
			[5, '"Outside diameter"', expect.stringContaining('kg cannot become mm')],
			[6, null, 'The row names no product. Write it, or leave the row out.'],
			[
				7,
				'"List price (EUR/100 m)"',
				expect.stringContaining('is outside what is permitted: above 0 EUR/m')
			],
			[7, '"Outside diameter"', expect.stringContaining('"many" is not a number')]
		]);
	});

	it('says once of a column that its unit cannot be read, and takes none of it', () => {
		const seen = look('product;List price (USDX/m);Outside diameter\nPX15B;5;15,1\nPX22B;6;22,2\n');
		expect(lines(seen)).toEqual([
			[1, '"List price (USDX/m)"', expect.stringMatching(/^The column is not taken: .*USDX/)]
		]);
		expect(seen.changes.map(({ quantity }) => quantity.name)).toEqual([
			'outside_diameter',
			'outside_diameter'
		]);
	});

	it('refuses pairs that a relation does not hold', () => {
		const runs = workbook.relations!.find(({ name }) => name === 'runs')!;
		const lineOf = new Set(runs.pairs.flatMap(([pipe, on]) => (pipe === 'PX10B' ? [on] : [])));
		const other = workbook.sets
			.find(({ name }) => name === 'line')!
			.members.find(({ id }) => !lineOf.has(id))!.id;
		const seen = look(`product;line;Dated month;Good metres made\nPX10B;${other};2027-05;1200\n`);
		expect(lines(seen)).toEqual([
			[2, null, expect.stringMatching(`^PX10B and ${other} do not go together`)]
		]);
	});
});

describe('what is hardly meant', () => {
	it('stops a price that is a hundred times what stood there, until it is ticked', () => {
		const stood = listPrice('PX15B');
		const seen = look(`product;List price\nPX15B;${(stood * 100).toFixed(2)}\nPX22B;0.951\n`);
		const [price, other] = seen.changes;
		expect(seen.doubted.get(price!)).toMatch(
			/this is 100 times as much\. Usual is at least 0\.088 and at most 5 EUR\/m\.$/
		);
		expect(acceptedChanges(seen, new Set())).toEqual([other]);
		expect(acceptedChanges(seen, new Set([changeKey(price!)]))).toEqual([price, other]);
	});

	it('meets one that nothing stood for by its siblings', () => {
		const rows = ['10', '11', '12', '10.5', '11.5', '0.9', '10', '11', '12', '110'];
		const ids = workbook.sets.find(({ name }) => name === 'product')!.members.map(({ id }) => id);
		const quantity = { name: 'shelf_life', label: 'Shelf life', unit: 'day', per: ['product'] };
		const sheets = [...workbook.sheets, { title: 'Store', quantities: [quantity] }];
		const added = openWith({ ...workbook, sheets });
		const text = `product;Shelf life\n${ids.map((id, i) => `${id};${rows[i]}`).join('\n')}\n`;
		const read = readCsv(text, 'f.csv');
		if (!read.ok) throw new Error(read.message);
		const looked = lookOver(
			read.grid,
			proposeMapping(read.grid, added.workbook),
			NO_CHOICES,
			added
		);
		if (!looked.ok) throw new Error(looked.message);
		expect([...looked.look.doubted].map(([{ at }, why]) => [at[0], why])).toEqual([
			[ids[5], expect.stringMatching(/^The others lie around 1[01]/)],
			[ids[9], expect.stringMatching(/^The others lie around 1[01]/)]
		]);
	});

	it('judges a figure in place of a typical value by its range and its siblings alone, and says so', () => {
		const stood = listPrice('PX15B');
		const typical = new Set([typicalKey('list_price', ['PX15B'])]);
		const words = (times: number, entries: TypicalEntries) => [
			...look(
				`product;List price\nPX15B;${(stood * times).toFixed(2)}\n`,
				{},
				entries
			).doubted.values()
		];
		// Six times what stood there: of one's own a jump, of a typical value only another plant.
		expect(words(6, NONE_TYPICAL)).toEqual([
			expect.stringMatching(/this is 5.99 times as much\.$/)
		]);
		expect(words(6, typical)).toEqual([]);
		expect(words(100, typical)).toEqual([
			'Usual is at least 0.088 and at most 5 EUR/m. A typical value stood there.'
		]);
		// Another entry's being typical says nothing of this one.
		expect(words(6, new Set([typicalKey('list_price', ['PX22B'])]))).toHaveLength(1);
	});

	it('takes for typical what stands as in the shipped workbook, until somebody has said that it is theirs', () => {
		const mine = { ...workbook, invented: false };
		const keys = (of: Workbook) => typicalEntries(ownQuantities(of, workbook));
		const key = typicalKey('list_price', ['PX15B']);
		expect(keys(mine).has(key)).toBe(true);
		const entered = applyCommand(mine, {
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'list_price', at: ['PX15B'], value: 0.5 }]
		});
		if (!entered.ok) throw new Error(entered.problem.message);
		expect(keys(entered.workbook).has(key)).toBe(false);
		const quantity = findQuantity(mine, 'list_price')!;
		const ticked = { ...mine, reviewed: [mineTick(quantity, ['PX15B'], workbook)] };
		expect(keys(ticked).has(key)).toBe(false);
		expect(keys(ticked).has(typicalKey('list_price', ['PX22B']))).toBe(true);
	});

	it('lets an ordinary rise pass', () => {
		expect(look(`product;List price\nPX15B;${listPrice('PX15B') * 1.09}\n`).doubted.size).toBe(0);
	});
});

describe('names that the workbook has not', () => {
	const text = 'product;List price\nRT20B;0.61\nPX15B;0.5\nRT20B;0.61\n';

	it('are listed with their rows, and left out as long as nobody decides', () => {
		const seen = look(text);
		expect(seen.unknown).toEqual([{ set: 'product', text: 'RT20B', line: 2, rows: 2, label: '' }]);
		expect(seen.changes.map(({ at }) => at)).toEqual([['PX15B']]);
	});

	it('are added empty, or like another one, or are its new name', () => {
		const decided = (decision: Decision) => {
			const unknown = new Map([[unknownKey('product', 'RT20B'), decision]]);
			const seen = look(text, { unknown });
			const done = applyCommand(workbook, {
				kind: 'several',
				commands: acceptedCommands(seen, new Set(seen.changes.map(changeKey)))
			});
			if (!done.ok) throw new Error(done.problem.message);
			return { seen, after: done.workbook, back: applyCommand(done.workbook, done.inverse) };
		};
		const empty = decided({ as: 'new', like: null });
		expect(empty.seen.problems.map(({ line }) => line)).toEqual([4]);
		expect(listPrice('RT20B', empty.after)).toBe(0.61);
		expect(inputAt(empty.after, 'base', 'outside_diameter', ['RT20B']).value).toBeNull();
		expect(empty.back).toMatchObject({ workbook });
		const like = decided({ as: 'new', like: 'RT15B' });
		expect(inputAt(like.after, 'base', 'outside_diameter', ['RT20B']).value).toBe(
			inputAt(workbook, 'base', 'outside_diameter', ['RT15B']).value
		);
		const renamed = decided({ as: 'renamed', from: 'RT15B' });
		const ids = renamed.after.sets
			.find(({ name }) => name === 'product')!
			.members.map(({ id }) => id);
		expect(renamed.seen.missing[0]!.ids).not.toContain('RT15B');
		expect([
			ids.includes('RT15B'),
			ids.includes('RT20B'),
			listPrice('RT20B', renamed.after)
		]).toEqual([false, true, 0.61]);
		expect(renamed.back).toMatchObject({ workbook });
	});

	it('may begin like one that gets a new name in the same file', () => {
		const unknown = new Map<string, Decision>([
			[unknownKey('product', 'RT20B'), { as: 'renamed', from: 'RT15B' }],
			[unknownKey('product', 'RT25B'), { as: 'new', like: 'RT15B' }]
		]);
		const seen = look('product;List price\nRT20B;0.61\nRT25B;0.75\n', { unknown });
		expect(seen.before).toMatchObject([
			{ kind: 'replace_member', id: 'RT15B', member: { id: 'RT20B' } },
			{ kind: 'add_member', member: { id: 'RT25B' }, like: 'RT20B' }
		]);
		expect(seen.changes.map(({ at }) => at)).toEqual([['RT20B'], ['RT25B']]);
	});

	it('are not held against what they copy', () => {
		const text = `product;List price\nRT20B;${listPrice('RT15B') / 5.5}\n`;
		const key = unknownKey('product', 'RT20B');
		const renamed = look(text, { unknown: new Map([[key, { as: 'renamed', from: 'RT15B' }]]) });
		expect([...renamed.doubted.values()].join()).toContain('It stood at');
		const copied = look(text, { unknown: new Map([[key, { as: 'new', like: 'RT15B' }]]) });
		expect([...copied.doubted.values()].join()).not.toContain('It stood at');
	});

	it('are called in words as the file does', () => {
		const [unknown] = look('product;description;List price\nRT20B;PE-RT 20 mm;0.61\n').unknown;
		expect(unknown).toMatchObject({ text: 'RT20B', label: 'PE-RT 20 mm' });
		const decision = { as: 'new', like: null, label: unknown!.label } as const;
		const decided = new Map([[unknownKey('product', 'RT20B'), decision]]);
		expect(look(text, { unknown: decided }).before).toMatchObject([
			{ kind: 'add_member', member: { id: 'RT20B', label: 'PE-RT 20 mm' } }
		]);
	});

	it('says why a name cannot be one', () => {
		const read = readCsv("product;List price\n15' coil;0.61\n", 'f.csv');
		if (!read.ok) throw new Error(read.message);
		const unknown: MemberChoices['unknown'] = new Map([
			[unknownKey('product', "15' coil"), { as: 'new', like: null }]
		]);
		const looked = lookOver(
			read.grid,
			proposeMapping(read.grid, workbook),
			{ ...NO_CHOICES, unknown },
			layout
		);
		expect(looked).toMatchObject({
			ok: false,
			message: expect.stringContaining('The new member of Product')
		});
	});
});

describe('members that are not in the file', () => {
	it('are said, and stay unless they are chosen to go', () => {
		const text = 'product;List price\nPX15B;0.5\n';
		const [missing] = look(text).missing;
		expect(missing).toMatchObject({ set: 'product' });
		expect(missing!.ids).toHaveLength(9);
		const seen = look(text, { removed: new Set([unknownKey('product', 'PB28B')]) });
		expect(seen.missing[0]!.ids).toEqual(missing!.ids);
		expect(seen.before).toEqual([
			{ kind: 'remove_member', set: 'product', id: 'PB28B', also: true }
		]);
	});
});
