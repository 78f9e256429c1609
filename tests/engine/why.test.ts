import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import type { Quantity } from '$lib/workbook/schema';
import { cellIn, enter, scenario, shop } from './model-shop';
import { workbookOf, type Shop } from './plan-builder';

const why = (model: Model, id: string, name: string, ...members: string[]) =>
	model.why(id, cellIn(model, name, ...members));
const reason = (model: Model, name: string, ...members: string[]) => {
	const { origin } = why(model, model.workbook.scenarios[0]!.id, name, ...members);
	return origin?.reason;
};
const opened = (given: Shop) => Model.open(workbookOf(given));
const quantities = (...all: [string, Omit<Quantity, 'name' | 'label'>][]) =>
	opened({
		sets: { line: ['L1', 'L2'] },
		units: [{ symbol: 'EUR' }],
		quantities: Object.fromEntries(all)
	});

describe('why a value is what it is', () => {
	const faster = scenario('faster', 'base', { speed: { L1: 20 } });
	const model = Model.open(shop([faster]));

	it('its formula stands with the numbers of this scenario and of the reference in it', () => {
		const { formula, here, there, reference } = why(model, 'faster', 'metres', 'L1');
		expect(reference).toBe('base');
		expect([here.value, there.value]).toEqual([1200, 600]);
		expect(formula).toEqual([
			{
				text: 'speed',
				role: 'name',
				here: { value: 20, state: 0 },
				reference: { value: 10, state: 0 },
				unit: 'm/min',
				quantity: 'speed'
			},
			{ text: ' * ', role: 'operator' },
			{
				text: 'hours',
				role: 'name',
				here: { value: 1, state: 0 },
				reference: { value: 1, state: 0 },
				unit: 'h',
				quantity: 'hours'
			}
		]);
	});

	it('an aggregate shows what it comes to', () => {
		const [call] = why(model, 'faster', 'total').formula!;
		expect(call).toMatchObject({
			text: 'SUM',
			role: 'function',
			here: { value: 1200 * 2 + 2400 * 3 },
			reference: { value: 600 * 2 + 2400 * 3 }
		});
	});

	it('within an aggregate nothing has a number of its own, and its names lead on', () => {
		const [, ...inside] = why(model, 'faster', 'total').formula!;
		expect(inside.every(({ isGathered, here }) => isGathered && !here)).toBe(true);
		expect(inside.find(({ text }) => text === 'revenue')?.quantity).toBe('revenue');
		expect(inside.at(-1)).toMatchObject({ text: ')' });
	});

	it('a function of one value keeps its name, and what follows an aggregate has its number again', () => {
		const model = quantities(
			['speed', { unit: '1', per: ['line'], value: { L1: 3, L2: 5 } }],
			['most', { unit: '1', formula: 'MAX(4; MAX(speed over line)) + ABS(speed[L1])' }]
		);
		const pieces = why(model, 'base', 'most').formula!;
		expect(pieces[0]).toMatchObject({ text: 'MAX', role: 'function', here: { value: 5 } });
		expect(pieces.find(({ text }) => text === 'ABS')).toEqual({ text: 'ABS', role: 'function' });
		expect(pieces.find(({ text, isGathered }) => text === 'speed' && !isGathered)).toMatchObject({
			here: { value: 3 }
		});
	});

	it('an input has no formula', () => {
		expect(why(model, 'base', 'speed', 'L1').formula).toBeNull();
	});

	it('what it reads comes in the order of the formula, each with both values', () => {
		const { feeds, feedCount } = why(model, 'faster', 'revenue', 'L1');
		expect(feeds.map(({ quantity, members }) => [quantity, ...members].join(' '))).toEqual([
			'metres L1',
			'grade_of L1',
			'price blue',
			'price red',
			'installed L1'
		]);
		expect(feedCount).toBe(5);
		expect(feeds[0]).toMatchObject({ here: { value: 1200 }, reference: { value: 600 } });
	});

	it('what reads it is found as well, and the inputs behind it, however far', () => {
		const { fedInto } = why(model, 'faster', 'metres', 'L1');
		expect(fedInto.map(({ quantity }) => quantity)).toEqual(['revenue']);
		const { inputs } = why(model, 'faster', 'total');
		expect(inputs.map((one) => ({ ...one, cells: one.cells.length }))).toEqual([
			{ quantity: 'installed', cells: 3, changed: 0 },
			{ quantity: 'speed', cells: 3, changed: 1 },
			{ quantity: 'hours', cells: 3, changed: 0 },
			{ quantity: 'grade_of', cells: 3, changed: 0 },
			{ quantity: 'price', cells: 2, changed: 0 }
		]);
	});

	it('who goes on to what lies far behind it is told the way, and none where it does not lie behind', () => {
		const total = cellIn(model, 'total');
		const { way } = model.why('base', cellIn(model, 'speed', 'L1'), total);
		expect(way.map(({ quantity, members }) => [quantity, ...members].join(' '))).toEqual([
			'total',
			'revenue L1',
			'metres L1',
			'speed L1'
		]);
		expect(model.why('base', total, cellIn(model, 'speed', 'L1')).way).toEqual([]);
		expect(model.why('base', total).way).toEqual([]);
	});

	it('a value that is there has no origin of an error', () => {
		expect(why(model, 'base', 'total').origin).toBeNull();
	});
});

describe('why a value is missing', () => {
	it('an empty input is named', () => {
		const model = Model.open(shop());
		enter(model, 'base', 'hours', ['L2'], null);
		expect(why(model, 'base', 'total').origin).toEqual({
			from: { quantity: 'hours', members: ['L2'], cell: cellIn(model, 'hours', 'L2') },
			reason: 'No value entered for hours, L2. Enter one.'
		});
		const book = shop();
		const labelled = book.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((one) =>
				one.name === 'hours' ? { ...one, label: 'Hours offered' } : one
			)
		}));
		const known = Model.open({ ...book, sheets: labelled });
		enter(known, 'base', 'hours', ['L2'], null);
		expect(reason(known, 'total')).toBe('No value entered for Hours offered, L2. Enter one.');
		expect(why(model, 'base', 'hours', 'L2').origin?.from).toBeNull();
	});

	it('a zero divisor is named, with its unit', () => {
		const model = quantities(
			['coil_length', { unit: 'm', per: ['line'], value: { L1: 100, L2: 0 } }],
			['coils', { unit: '1/m', per: ['line'], formula: '1 / coil_length' }],
			['most', { unit: '1/m', formula: 'MAX(coils over line)' }]
		);
		expect(why(model, 'base', 'most').origin).toEqual({
			from: { quantity: 'coils', members: ['L2'], cell: cellIn(model, 'coils', 'L2') },
			reason:
				'coils of L2 divides by zero: coil_length of L2 is 0 m. Enter another value, or test for zero with IF.'
		});
	});

	it('a divisor of several terms is named by its zeros, or written as it stands', () => {
		const model = quantities(
			['a', { value: 0 }],
			['b', { value: 0 }],
			['c', { value: 5 }],
			['product', { formula: '1 / (a * c)' }],
			['both', { formula: '1 / (a + b)' }],
			['difference', { formula: '1 / (c - 5)' }]
		);
		expect(reason(model, 'product')).toMatch(/divides by zero: a is 0\./);
		expect(reason(model, 'both')).toMatch(/divides by zero: a and b are 0\./);
		expect(reason(model, 'difference')).toMatch(/divides by zero: c - 5 comes to 0\./);
	});

	it('a fixed input is named too, though the plan has folded it away', () => {
		const model = quantities(
			['zero', { unit: 'h', value: 0, fixed: true }],
			['empty', { unit: 'h', value: null, fixed: true }],
			['rate', { unit: '1/h', formula: '1 / zero' }],
			['twice', { unit: 'h', formula: 'empty * 2' }]
		);
		expect(reason(model, 'rate')).toMatch(/zero is 0 h/);
		expect(reason(model, 'twice')).toBe('No value entered for empty. Enter one.');
	});

	it('an input outside its range is named with the range', () => {
		const model = Model.open(shop());
		enter(model, 'base', 'speed', ['L1'], 0);
		expect(reason(model, 'total')).toBe(
			'speed of L1 is 0 m/min, outside its permitted range (above 0 and at most 100 m/min). Enter a value within it, or change the range.'
		);
	});

	it('a result outside its range likewise', () => {
		const model = quantities(
			['share', { unit: '%', value: 120 }],
			['rest', { unit: '%', formula: '100% - share', range: { min: 0 } }]
		);
		expect(reason(model, 'rest')).toBe(
			'rest is -20 %, outside its permitted range (at least 0 %). Check what it is computed from, or change the range.'
		);
	});

	it('a root, a logarithm and a power say of what', () => {
		const model = quantities(
			['x', { value: -4 }],
			['root', { formula: 'SQRT(x)' }],
			['log', { formula: 'LN(x)' }],
			['power', { formula: 'x ^ 0.5' }],
			['inverse', { formula: '(x + 4) ^ (-1)' }]
		);
		expect(reason(model, 'root')).toMatch(/the square root of x \(-4\), which is no real number/);
		expect(reason(model, 'log')).toMatch(/the logarithm of x \(-4\)/);
		expect(reason(model, 'power')).toMatch(/power of x \(-4\)/);
		expect(reason(model, 'inverse')).toMatch(/a negative power of x \+ 4 \(0\)/);
	});

	it('what is too large, and what a function cannot take', () => {
		const model = quantities(
			['x', { value: 1e200 }],
			['digits', { value: 0.5 }],
			['big', { formula: 'x * x' }],
			['rounded', { formula: 'ROUND(x; digits)' }],
			['rest', { formula: 'MOD(x; digits - 0.5)' }]
		);
		expect(reason(model, 'big')).toMatch(/^big grows beyond what a number can hold/);
		expect(reason(model, 'rounded')).toBe(
			'rounded rounds to digits (0.5) digits; give a whole number.'
		);
		expect(reason(model, 'rest')).toMatch(/division by digits - 0.5 \(0\)/);
	});

	it('a member that is not present is absent, and says what says so', () => {
		const model = Model.open(shop());
		expect(why(model, 'base', 'revenue', 'L3').origin).toEqual({
			from: null,
			reason: 'revenue of L3 is absent in this scenario: installed of L3 is no.'
		});
		expect(reason(model, 'speed', 'L3')).toBe(
			'speed of L3 is absent in this scenario: installed of L3 is no.'
		);
	});

	it('a choice that meets no pair is named with the member that it holds', () => {
		const model = opened({
			sets: { product: ['A', 'B'], line: ['L1', 'L2'] },
			relations: {
				runs: {
					sets: ['product', 'line'],
					pairs: [
						['A', 'L1'],
						['B', 'L2']
					]
				}
			},
			quantities: {
				speed: {
					per: ['product', 'line'],
					in: ['runs'],
					value: { A: { L1: 1 }, B: { L2: 2 } }
				},
				line_of: { type: { member_of: 'line' }, per: ['product'], value: { A: 'L2', B: 'L2' } },
				chosen: { per: ['product'], formula: 'speed[line_of]' }
			}
		});
		expect(reason(model, 'chosen', 'A')).toBe(
			'chosen of A looks up speed by line_of of A (L2), and there is no such value. Choose another member, or give it a value.'
		);
		expect(reason(model, 'chosen', 'B')).toBeUndefined();
	});

	it('a neighbour off the end is named with the member at the end', () => {
		const model = opened({
			sets: { month: ['jan', 'feb'] },
			quantities: {
				plan: { per: ['month'], value: { jan: 1, feb: 2 } },
				step: { per: ['month'], formula: 'plan - plan[month - 1]' }
			}
		});
		expect(reason(model, 'step', 'jan')).toBe(
			'step of jan reads plan[month - 1], but there is no member before jan. Write after else what holds there.'
		);
	});

	it('a question without an answer says why', () => {
		const model = opened({
			sets: { year: { members: ['y0', 'y1', 'y2'].map((id, number) => ({ id, number })) } },
			quantities: {
				good: { per: ['year'], value: { y0: 5, y1: 5, y2: 5 } },
				two: { per: ['year'], value: { y0: -10, y1: 21, y2: -11 } },
				bad: { per: ['year'], value: { y0: -10, y1: 2, y2: 2 } },
				rate_of_good: { formula: 'IRR(good over year)' },
				rate_of_two: { formula: 'IRR(two over year)' },
				back: { formula: 'PAYBACK(bad over year)' },
				least: { formula: 'MIN(good over year where good > 9)' }
			}
		});
		expect(reason(model, 'rate_of_good')).toMatch(/its cash flows never change sign/);
		expect(reason(model, 'rate_of_two')).toMatch(/at 2 rates \(0 % and 10 %\)/);
		expect(reason(model, 'back')).toMatch(/does not come back to 0; it ends at -6/);
		expect(reason(model, 'least')).toBe('least has no answer: nothing is left to take the MIN of.');
	});

	it('a loop and a broken formula are told in the words of the plan', () => {
		const model = quantities(
			['a', { formula: 'b + 1' }],
			['b', { formula: 'a + 1' }],
			['broken', { formula: 'nowhere + 1' }],
			['after', { formula: 'broken * 2' }]
		);
		const said = (name: string) =>
			model.problems.find(({ quantity }) => quantity === name)?.message;
		expect(reason(model, 'a')).toBe(said('a') ?? said('b'));
		expect(reason(model, 'after')).toBe(said('broken'));
		expect(why(model, 'base', 'after').origin?.from?.quantity).toBe('broken');
	});

	it('an error that comes from the reference scenario names that scenario', () => {
		const model = Model.open(
			shop([
				scenario('bare', 'base', { hours: { L1: null } }),
				scenario('full', 'base', {}, 'bare')
			])
		);
		expect(why(model, 'full', 'gain').origin).toMatchObject({
			from: { quantity: 'hours', members: ['L1'] },
			reason: 'No value entered for hours, L1. Enter one. This is so in the scenario bare.'
		});
	});
});

describe('the errors of a scenario in brief', () => {
	it('origins are grouped by quantity, all of its members, some, or one', () => {
		const model = Model.open(shop([scenario('third', 'base', { installed: { L3: true } })]));
		enter(model, 'base', 'price', ['blue'], null);
		enter(model, 'base', 'price', ['red'], null);
		enter(model, 'base', 'hours', ['L2'], null);
		expect(model.errorOrigins('third').map(({ where }) => where)).toEqual([
			'hours of L2',
			'price, all 2 grade'
		]);
	});

	it('each quantity that shows an error has its first cell and a reason', () => {
		const model = Model.open(shop());
		enter(model, 'base', 'hours', ['L2'], null);
		expect(model.faults('base').map(({ quantity, count }) => [quantity, count])).toEqual([
			['metres', 1],
			['revenue', 1],
			['total', 1],
			['gain', 1]
		]);
		expect(model.faults('base')[0]!.origin.reason).toMatch(/hours, L2/);
	});
});

describe('checks and cautions', () => {
	const model = () =>
		quantities(
			['share', { unit: '%', per: ['line'], value: { L1: 60, L2: 40 } }],
			[
				'closes',
				{
					unit: '%',
					formula: 'SUM(share over line) - 100%',
					check: { message: 'The shares add to 100 %.', tolerance: 0.5 }
				}
			],
			[
				'positive',
				{
					type: 'yes_no',
					per: ['line'],
					formula: 'share > 0%',
					check: { message: 'A share is above 0.' }
				}
			],
			[
				'large',
				{
					type: 'yes_no',
					per: ['line'],
					formula: 'share > 50%',
					caution: { message: 'More than half.' }
				}
			]
		);

	it('hold within the tolerance, and cautions say where they apply', () => {
		const { hold, fail, cautions } = model().checks('base');
		expect(hold).toBe(3);
		expect(fail).toEqual([]);
		expect(cautions).toMatchObject([{ place: { members: ['L1'] }, message: 'More than half.' }]);
	});

	it('fail beyond it, and where they have no value', () => {
		const edited = model();
		enter(edited, 'base', 'share', ['L1'], 0);
		expect(edited.checks('base').fail.map(({ place }) => place.quantity)).toEqual([
			'closes',
			'positive'
		]);
		enter(edited, 'base', 'share', ['L1'], null);
		expect(edited.checks('base').fail[0]!.message).toBe(
			'The shares add to 100 %. (No value entered for share, L1. Enter one.)'
		);
	});
});

describe('a quantity that is being written', () => {
	const open = (): Model => Model.open(shop());
	const draft = (rest: Partial<Quantity>): Quantity => ({ name: 'new', label: 'New', ...rest });

	it('says what its formula gives, how it will read, and its first values', () => {
		const model = open();
		const trial = model.tryQuantity(draft({ unit: 'EUR', formula: 'SUM(revenue) / 2' }));
		expect(trial).toMatchObject({
			problems: [],
			gives: 'EUR',
			written: { formula: 'SUM(revenue over line) / 2' },
			sample: [{ quantity: 'new', members: [], value: 4200, state: 0 }]
		});
		expect(model.layout.byName.has('new')).toBe(false);
	});

	it('says what is wrong, and computes nothing then', () => {
		const trial = open().tryQuantity(draft({ unit: 'h', formula: 'total' }));
		expect(trial.problems).toHaveLength(1);
		expect(trial.gives).toBe('EUR');
		expect(trial.sample).toEqual([]);
	});

	it('may take the place of another', () => {
		const model = open();
		const { quantity } = model.layout.byName.get('metres')!;
		const trial = model.tryQuantity({ ...quantity, formula: 'speed * hours / 2' }, 'metres');
		expect(trial.sample.map(({ value }) => value).slice(0, 2)).toEqual([300, 1200]);
		expect(
			model.tryQuantity({ ...quantity, name: 'line' }, 'metres').problems[0]?.code
		).toBeTruthy();
	});
});

describe('why a value is not there, where the plan had already folded it', () => {
	const model = opened({
		sets: { line: ['L1', 'L2'], grade: ['blue', 'red'], none: [] },
		relations: { runs: { sets: ['line', 'grade'], pairs: [['L1', 'blue']] } },
		quantities: {
			speed: { per: ['line'], value: { L1: 1 } },
			first: { per: ['line'], formula: 'speed', range: { max: 0 }, where: 'line = L1' },
			uses: { per: ['line'], formula: 'first + 1', where: 'line = L2' },
			mass: { per: ['line', 'grade'], in: ['runs'], value: { L1: { blue: 3 } } },
			double: { per: ['line', 'grade'], formula: 'mass * 2' },
			each: { per: ['none'] },
			least: { formula: 'MIN(each over none)' },
			here: { formula: 'here[base] + 1' },
			out: { formula: 'back[reference]' },
			back: { formula: 'out[reference] + 1' }
		}
	});

	it('a fixed condition that says no, not what is empty or out of range behind it', () => {
		expect(reason(model, 'first', 'L2')).toBe(
			'first of L2 is absent in this scenario: its condition (where) says no.'
		);
		expect(reason(model, 'uses', 'L1')).toBe(
			'uses of L1 is absent in this scenario: its condition (where) says no.'
		);
		expect(reason(model, 'uses', 'L2')).toBe(
			'first of L2 is absent in this scenario: its condition (where) says no.'
		);
	});

	it('a pair that the relation does not hold', () => {
		expect(reason(model, 'double', 'L2', 'red')).toBe(
			'double of L2, red reads mass, which has no value there: runs does not hold that pair. Add the pair, or keep the formula to the same relation.'
		);
	});

	it('an aggregate over an empty set', () => {
		expect(reason(model, 'least')).toBe('least has no answer: nothing is left to take the MIN of.');
	});

	it('each cell of a loop names its own loop', () => {
		expect(reason(model, 'here')).toMatch(/^here ← here:/);
		expect(reason(model, 'out')).toMatch(/^out ← back ← out:/);
		expect(reason(model, 'back')).toMatch(/^out ← back ← out:/);
	});
});
