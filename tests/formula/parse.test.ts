import { describe, expect, it } from 'vitest';
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import type { Argument, Call, Expression, Reference } from '$lib/formula/tree';

function read(text: string): Expression {
	const result = parseFormula(text);
	if (!result.ok) throw new Error(`${text}: ${result.problem.message}`);
	return result.expression;
}

function reference(text: string): Reference {
	const expression = read(text);
	if (expression.kind !== 'reference') throw new Error(`${text} is a ${expression.kind}`);
	return expression;
}

function firstArgument(text: string): Argument {
	return (read(text) as Call).args[0]!;
}

const printed = (text: string) => printFormula(read(text));

describe('a number', () => {
	it.each([
		['1.5', 1.5],
		['.5', 0.5],
		['1e-3', 0.001],
		['1E5', 100000],
		['007', 7]
	])('%s is %d and is printed as written', (text, value) => {
		expect(read(text)).toMatchObject({ kind: 'number', value, text, unit: null });
		expect(printed(text)).toBe(text);
	});

	it('has its unit in the brackets that touch it, whatever the unit is', () => {
		expect(read('2 * 0.5[ EUR/(person*h) ]')).toMatchObject({
			right: {
				value: 0.5,
				unit: 'EUR/(person*h)',
				span: { start: 4, end: 25 },
				unitSpan: { start: 9, end: 23 }
			}
		});
	});

	it('called Infinity or NaN is only a name', () => {
		expect(read('Infinity')).toMatchObject({ kind: 'reference', name: 'Infinity' });
		expect(read('NaN')).toMatchObject({ kind: 'reference', name: 'NaN' });
	});
});

describe('a reference', () => {
	it('is a name of any script', () => {
		expect(reference('Wanddicke_größe').name).toBe('Wanddicke_größe');
		expect(reference('壁厚').name).toBe('壁厚');
		expect(reference('constructor').name).toBe('constructor');
	});

	it('takes a fixed member, bare or in quotes', () => {
		expect(reference('speed[L2]').indices).toMatchObject([
			{ kind: 'member', value: { name: 'L2', quoted: false } }
		]);
		expect(reference("hours['5x24']").indices).toMatchObject([
			{ kind: 'member', value: { name: '5x24', quoted: true } }
		]);
		expect(reference("hours['over; ]']").indices).toMatchObject([{ value: { name: 'over; ]' } }]);
	});

	it('takes the member that a choice holds, and a choice of a choice', () => {
		expect(reference('density[material_of_layer]').indices).toMatchObject([
			{ value: { kind: 'reference', name: 'material_of_layer' } }
		]);
		expect(reference('price[material[layer]]').indices).toMatchObject([
			{ value: { name: 'material', indices: [{ value: { name: 'layer' } }] } }
		]);
		expect(reference('limit[ARGMIN(speed over limit)]').indices).toMatchObject([
			{ value: { kind: 'call', name: 'ARGMIN' } }
		]);
	});

	it('takes a neighbour, with what holds off the end', () => {
		expect(reference('stock[month - 1 else opening * 2]')).toMatchObject({
			indices: [{ kind: 'neighbour', axis: 'month', offset: -1, span: { start: 6, end: 15 } }],
			otherwise: { kind: 'binary', operator: '*' }
		});
		expect(reference('cash[year+12]').indices).toMatchObject([{ offset: 12 }]);
	});

	it('takes the base and the scenario that this one is measured against', () => {
		expect(reference('ebit[base]').indices).toMatchObject([{ kind: 'scenario', which: 'base' }]);
		expect(reference('ebit[reference; y3]').indices).toMatchObject([
			{ kind: 'scenario', which: 'reference' },
			{ kind: 'member', value: { name: 'y3' } }
		]);
	});

	it('says from which set its member is', () => {
		expect(reference('stage.line')).toMatchObject({
			qualifier: 'stage',
			name: 'line',
			nameSpan: { start: 6, end: 10 }
		});
		expect(reference("pattern.'5x24'")).toMatchObject({ qualifier: 'pattern', quoted: true });
		expect(reference('labour_pool[stage.line]').indices).toMatchObject([
			{ value: { qualifier: 'stage' } }
		]);
	});
});

describe('an aggregate', () => {
	it('names the sets that it gathers, in a list joined by × or *', () => {
		const over = [
			{ index: null, axis: 'product' },
			{ index: 'l', axis: 'line' }
		];
		expect(firstArgument('SUM(plan over product × l in line)').over).toMatchObject(over);
		expect(firstArgument('SUM(plan over product*l in line)').over).toMatchObject(over);
	});

	it('keeps its filter and what holds when nothing is left', () => {
		expect(firstArgument('MIN(x over layer where x > 0 else 1[mm])')).toMatchObject({
			where: { operator: '>' },
			otherwise: { value: 1, unit: 'mm' }
		});
		expect(firstArgument('FIRST(month where stock < 0)')).toMatchObject({
			over: [],
			where: { operator: '<' },
			otherwise: null
		});
	});

	it('gathers argument by argument', () => {
		const { args } = read('MAX(0; a over line; b where c)') as Call;
		expect(args.map(({ over, where }) => [over.length, where !== null])).toEqual([
			[0, false],
			[1, false],
			[0, true]
		]);
	});

	it('is found in any case and printed in capitals', () => {
		expect(printed('sum(x over layer)')).toBe('SUM(x over layer)');
	});
});

describe('operators', () => {
	it.each([
		['a − b', 'a - b'],
		['a × b · c ÷ d', 'a * b * c / d'],
		['a ≤ b', 'a <= b'],
		['a ≥ b', 'a >= b'],
		['a ≠ b', 'a <> b'],
		['x[month − 1]', 'x[month - 1]'],
		['=a+b', 'a + b'],
		['  = ( a )  ', 'a'],
		['+a', 'a'],
		['+a^2', 'a^2']
	])('%s is entered, %s is kept', (typed, kept) => {
		expect(printed(typed)).toBe(kept);
	});

	it.each([
		'a - (b - c)',
		'a - b - c',
		'a / (b * c)',
		'(a + b) * c',
		'(-x)^2',
		'-(x^2)',
		'2^-1',
		'(2^3)^2',
		'2^(3^2)',
		'(a^b)%',
		'5%^2',
		'(-5)%',
		'--x',
		'a - -b',
		'-(a * b)',
		'-a * b',
		'(a < b) = c',
		'AND(a < b; b < c)',
		"IF(limited_by = 'haul-off'; 1; 0)"
	])('%s keeps the brackets that it needs', (text) => {
		expect(printed(text)).toBe(text);
	});

	it.each([
		['(a * b) + c', 'a * b + c'],
		['((a))', 'a'],
		['(a - b) - c', 'a - b - c'],
		['-(x)', '-x'],
		['-(5%)', '-5%'],
		['(5%)^2', '5%^2'],
		['SUM((x) over l)', 'SUM(x over l)'],
		['(a + b) > (c)', 'a + b > c']
	])('%s loses those that it does not', (typed, kept) => {
		expect(printed(typed)).toBe(kept);
	});

	it('have the span of their operands, brackets included', () => {
		expect(read(' (a + b) * c')).toMatchObject({
			span: { start: 1, end: 12 },
			left: { span: { start: 2, end: 7 } }
		});
		expect(read('= -x')).toMatchObject({ span: { start: 2, end: 4 }, of: { span: { start: 3 } } });
	});
});

describe('the formulas of the trade', () => {
	it.each([
		'wall_min + eccentricity[gauging] + k_factor * SQRT(wall_sigma[gauging]^2 + gauge_u[gauging]^2)',
		'PI() * (layer_od - layer_thickness) * layer_thickness * density[layer_material]',
		'SUM(layer_mass where extruder_of_layer = extruder)',
		'IF(extruder_load[tie] = 0; 9999[m/min]; max_output[tie] * run_at[tie] / extruder_load[tie])',
		'ARGMIN(speed_limit over limit)',
		'SUM(works * 1[day] over day where AND(month_of_day = month; weekday_of_day = weekday))',
		'line_scheduled * (1 - lost_to_stops * 1[year] / SUM(line_scheduled over month))',
		'(running_speed - restart_scrap / (pipe_mass * mtbf)) * (1 - run_scrap) * (1 - coil_loss)',
		'MAX(0; wc_share * MAX(revenue - revenue[reference] over plan_year where plan_year > today))',
		'cumulative[year - 1 else 0] + cash',
		'SUM(layer_thickness[l] over l in layer where l > layer)',
		'cash[year_0] + NPV(wacc; cash over year where year > year_0)',
		'MIRR(cash over year; finance_rate; reinvest_rate)',
		'SUM(x over month) / SPAN(month)',
		'CEILING(x; 1[pallet])'
	])('%s', (text) => {
		expect(printed(text)).toBe(text);
	});
});
