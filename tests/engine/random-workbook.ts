/**
 * Workbooks made at random, well-formed and with units that fit: sets (cyclic, numbered, with members that come
 * and go), relations, inputs with zeros, negatives and gaps, formulas of every kind the language has, and
 * scenarios. `pick(n)` gives a whole number below n; everything follows from what it gives.
 */
import {
	VERSION,
	type Quantity,
	type Scalar,
	type Scenario,
	type Values,
	type Workbook
} from '$lib/workbook/schema';

export type Pick = (count: number) => number;

type Tree = { [member: string]: Values };

/** Plain numbers, lengths, times. */
type Dimension = 0 | 1 | 2;
type Kind = Dimension | 'yes' | { readonly member: string };

interface AxisOf {
	readonly name: string;
	readonly set: string;
}

interface Known {
	readonly name: string;
	readonly kind: Kind;
	readonly axes: readonly AxisOf[];
}

const UNITS: readonly (readonly (string | undefined)[])[] = [
	[undefined],
	['m', 'mm'],
	['h', 'min']
];
const NUMBERS = [0, 0, 1, 2, -1, 3, 0.5, 10, -7, 0.1, 1000, 0.25, 4, 5, -2];

export function randomWorkbook(pick: Pick): Workbook {
	return new Maker(pick).workbook();
}

class Maker {
	readonly #known: Known[] = [];
	readonly #sets: { name: string; ids: string[]; cyclic: boolean; numbers: boolean }[] = [];
	/** Axes that relations bind, by the relation's name. */
	readonly #relations = new Map<string, string[]>();
	#bound = 0;

	constructor(readonly pick: Pick) {}

	workbook(): Workbook {
		const { pick } = this;
		const sets: Workbook['sets'] = [];
		const quantities: Quantity[] = [];
		const count = 1 + pick(4);
		for (let i = 0; i < count; i++) {
			const name = 'stuv'.charAt(i);
			const ids = Array.from({ length: 1 + pick(4) }, (_, k) => `${name}${k + 1}`);
			const numbered = pick(2) === 0;
			const start = pick(2) === 0 ? 1 : 2026;
			const cyclic = pick(4) === 0;
			const present = pick(4) === 0;
			this.#sets.push({ name, ids, cyclic, numbers: numbered });
			sets.push({
				name,
				label: name,
				members: ids.map((id, k) => (numbered ? { id, number: start + k } : { id })),
				...(cyclic ? { cyclic } : {}),
				...(present ? { present: `has_${name}` } : {})
			});
			if (present) quantities.push(this.#presence(name));
		}
		const relations: Workbook['relations'] = [];
		if (count > 1 && pick(2) === 0) {
			const [one, two] = [this.#sets[0]!, this.#sets[1]!];
			const pairs = one.ids.flatMap((a) => two.ids.map((b) => [a, b])).filter(() => pick(3) > 0);
			relations.push({ name: 'runs', sets: [one.name, two.name], pairs });
			this.#relations.set('runs', [one.name, two.name]);
		}
		const wanted = 3 + pick(13);
		for (let i = 0; i < wanted; i++) quantities.push(this.#quantity(`q${i}`));
		const scenarios: Scenario[] = [{ id: 'main', title: 'Base', parent: null, changes: [] }];
		for (let i = pick(3); i > 0; i--) scenarios.push(this.#scenario(scenarios, quantities));
		return {
			format: 'metrewright',
			version: VERSION,
			title: 'At random',
			sets,
			relations,
			sheets: [{ title: 'One', quantities }],
			scenarios
		};
	}

	#presence(set: string): Quantity {
		const name = `has_${set}`;
		this.#known.push({ name, kind: 'yes', axes: [{ name: set, set }] });
		if (this.pick(4) === 0)
			return {
				name,
				label: name,
				type: 'yes_no',
				per: [set],
				formula: `ORD(${set}) <> ${1 + this.pick(3)}`
			};
		const value = this.#leaves([{ name: set, set }], () => this.pick(4) > 0) as Tree;
		return { name, label: name, type: 'yes_no', per: [set], value };
	}

	#quantity(name: string): Quantity {
		const { pick } = this;
		const axes: AxisOf[] = [];
		for (const { name: set } of this.#sets)
			if (axes.length < 2 && pick(5) < 2) axes.push({ name: set, set });
		if (axes.length === 1 && pick(14) === 0)
			axes.push({ name: `other_${axes[0]!.name}`, set: axes[0]!.set });
		const related =
			axes.length === 2 && axes[0]!.name === 's' && axes[1]!.name === 't' && pick(2) === 0;
		const kind = this.#kind();
		const unit = typeof kind === 'number' ? this.#one(UNITS[kind]!) : undefined;
		const shape = {
			name,
			label: name,
			...(kind === 'yes' ? { type: 'yes_no' as const } : {}),
			...(typeof kind === 'object' ? { type: { member_of: kind.member } } : {}),
			...(unit === undefined ? {} : { unit }),
			...(axes.length > 0
				? {
						per: axes.map((axis) =>
							axis.name === axis.set ? axis.set : `${axis.name}: ${axis.set}`
						)
					}
				: {}),
			...(related && this.#relations.size > 0 ? { in: ['runs'] } : {}),
			...(typeof kind === 'number' && pick(9) === 0
				? { range: this.#one([{ min: -3 }, { max: 50 }, { above: 0 }, { min: -10, below: 100 }]) }
				: {})
		};
		const isInput = pick(5) < 2;
		const value = this.#leaves(axes, () => this.#scalar(kind));
		if (isInput) {
			const fixed = pick(typeof kind === 'object' ? 4 : 12) === 0;
			const where = pick(14) === 0 ? { where: this.#condition(axes, 1) } : {};
			this.#known.push({ name, kind, axes });
			return { ...shape, value, ...(fixed ? { fixed } : where) };
		}
		const along = axes.find((axis) => axis.name === axis.set);
		let formula: Quantity['formula'];
		if (typeof kind === 'number' && along && pick(7) === 0) {
			const step = `[${along.name} - 1 else ${this.#literal(kind)}]`;
			formula = `${name}${step} + ${this.#number(kind, axes, 2)}`;
		} else if (along && pick(9) === 0) {
			const { ids } = this.#setOf(along.set);
			const cases: Record<string, string> = { [this.#one(ids)]: this.#of(kind, axes, 2) };
			cases['*'] = pick(3) === 0 ? 'input' : this.#of(kind, axes, 2);
			formula = { by: along.name, cases };
		} else formula = this.#of(kind, axes, 3);
		const where = pick(10) === 0 ? { where: this.#condition(axes, 1) } : {};
		this.#known.push({ name, kind, axes });
		const entered = typeof formula === 'object' ? { value } : {};
		return { ...shape, ...entered, formula, ...where };
	}

	#kind(): Kind {
		const at = this.pick(20);
		if (at < 11) return 0;
		if (at < 13) return 1;
		if (at < 15) return 2;
		return at < 17 ? 'yes' : { member: this.#one(this.#sets).name };
	}

	#scalar(kind: Kind): Scalar | undefined {
		const { pick } = this;
		if (pick(12) === 0) return undefined;
		if (pick(30) === 0) return null;
		if (kind === 'yes') return pick(2) === 0;
		if (typeof kind === 'object') return this.#one(this.#setOf(kind.member).ids);
		return this.#one(NUMBERS);
	}

	#leaves(axes: readonly AxisOf[], leaf: () => Scalar | undefined): Values {
		const [first, ...rest] = axes;
		if (!first) return leaf() ?? null;
		const tree: Tree = {};
		for (const id of this.#setOf(first.set).ids) {
			const value = rest.length > 0 ? this.#leaves(rest, leaf) : leaf();
			if (value !== undefined) tree[id] = value;
		}
		return tree;
	}

	#scenario(before: readonly Scenario[], quantities: readonly Quantity[]): Scenario {
		const { pick } = this;
		const inputs = quantities.filter(
			(quantity) => !quantity.fixed && (!quantity.formula || typeof quantity.formula === 'object')
		);
		const changes = new Map<string, Values>();
		for (let i = pick(4); i > 0 && inputs.length > 0; i--) {
			const one = this.#one(inputs);
			const { kind, axes } = this.#known.find(({ name }) => name === one.name)!;
			const value = this.#leaves(axes, () => (pick(2) === 0 ? undefined : this.#scalar(kind)));
			changes.set(one.name, value);
		}
		return {
			id: `case${before.length}`,
			title: 'A case',
			parent: this.#one(before).id,
			...(pick(3) === 0 ? { against: this.#one(before).id } : {}),
			changes: [...changes].map(([quantity, value]) => ({ quantity, value }))
		};
	}

	#of(kind: Kind, scope: readonly AxisOf[], depth: number): string {
		if (kind === 'yes') return this.#condition(scope, depth);
		if (typeof kind === 'object') return this.#member(kind.member, scope, depth);
		return this.#number(kind, scope, depth);
	}

	#number(dimension: Dimension, scope: readonly AxisOf[], depth: number): string {
		const { pick } = this;
		if (depth <= 0) return this.#leaf(dimension, scope);
		const same = () => this.#number(dimension, scope, depth - 1);
		const plain = () => this.#number(0, scope, depth - 1);
		const condition = () => this.#condition(scope, depth - 1);
		switch (pick(dimension === 0 ? 24 : 15)) {
			case 0:
			case 1:
				return this.#leaf(dimension, scope);
			case 2:
				return `(${same()} + ${same()})`;
			case 3:
				return `(${same()} - ${same()})`;
			case 4:
				return `(${same()} * ${plain()})`;
			case 5:
				return `(${same()} / ${plain()})`;
			case 6:
				return `IF(${condition()}; ${same()}; ${same()})`;
			case 7:
				return `IFERROR(${same()}; ${same()})`;
			case 8:
				return `${this.#one(['MIN', 'MAX', 'SUM'])}(${same()}; ${same()})`;
			case 9:
				return this.#one([
					`ABS(${same()})`,
					`(-(${same()}))`,
					`MOD(${same()}; ${this.#literal(dimension)})`
				]);
			case 10:
			case 11:
			case 12:
			case 13:
				return this.#gathered(
					this.#one(['SUM', 'SUM', 'MIN', 'MAX', 'AVERAGE', 'STDEV', 'MEDIAN']),
					dimension,
					scope,
					depth
				);
			case 14: {
				const step = dimension === 0 ? this.#one(['2', '0.5']) : this.#literal(dimension);
				return `${this.#one(['CEILING', 'FLOOR'])}(${same()}; ${step})`;
			}
			case 15: {
				const base = (1 + pick(2)) as Dimension;
				return `(${this.#number(base, scope, depth - 1)} / ${this.#number(base, scope, depth - 1)})`;
			}
			case 16:
				return `${this.#one(['ROUND', 'ROUNDUP', 'ROUNDDOWN'])}(${plain()}; ${this.#one(['0', '1', '2', '(-1)'])})`;
			case 17:
				if (pick(3) === 0) return this.#normal(scope, depth);
				return this.#one([
					`SQRT(${plain()})`,
					`LN(${plain()})`,
					`(${plain()} ^ ${this.#one(['2', '0', '0.5', '(-1)'])})`,
					`EXP(${plain()} / 100)`
				]);
			case 18:
				if (pick(3) === 0) return this.#line(scope);
				return this.#counted(scope, depth);
			case 19:
			case 20:
				return this.#invested(scope);
			case 21:
			case 22:
				return this.#dated(plain);
			default:
				return this.#numbered(scope);
		}
	}

	#leaf(dimension: Dimension, scope: readonly AxisOf[]): string {
		const found = this.#pickKnown((known) => known.kind === dimension);
		if (!found || this.pick(5) === 0) return this.#literal(dimension);
		return this.#reference(found, scope);
	}

	#literal(dimension: Dimension): string {
		if (this.pick(8) === 0) return '0';
		const value = this.#one(['1', '2', '0.5', '3', '20']);
		if (dimension === 0) return value;
		return `${value}[${this.#one(UNITS[dimension]!)}]`;
	}

	/** A quantity's value where the formula stands, at fixed members, by choice, at a neighbour. */
	#reference(known: Known, scope: readonly AxisOf[], at = new Map<string, string>()): string {
		const { pick } = this;
		const indices: string[] = [];
		let otherwise = '';
		for (const axis of known.axes) {
			const forced = at.get(axis.name);
			const aligned = scope.some(({ name, set }) => name === axis.name && set === axis.set);
			if (forced !== undefined) indices.push(forced);
			else if (aligned && axis.name === axis.set && pick(6) === 0) {
				const { ids } = this.#setOf(axis.set);
				const way = pick(3);
				if (way === 0) indices.push(this.#one(ids));
				else if (way === 1 || otherwise !== '') indices.push(this.#member(axis.set, scope, 0));
				else {
					indices.push(`${axis.name} ${this.#one(['-', '+'])} ${1 + pick(2)}`);
					if (typeof known.kind === 'number' && pick(2) === 0)
						otherwise = ` else ${this.#literal(known.kind)}`;
				}
			} else if (!aligned)
				indices.push(
					pick(3) === 0 ? this.#member(axis.set, scope, 0) : this.#one(this.#setOf(axis.set).ids)
				);
		}
		if (pick(12) === 0) indices.unshift(this.#one(['reference', 'reference', 'base']));
		return indices.length > 0 ? `${known.name}[${indices.join('; ')}${otherwise}]` : known.name;
	}

	/** An aggregate whose terms depend on what is gathered. */
	#gathered(name: string, dimension: Dimension, scope: readonly AxisOf[], depth: number): string {
		const { inside, over, forced } = this.#gather(dimension, scope);
		const more = this.pick(3) === 0 ? ` + ${this.#number(dimension, inside, depth - 2)}` : '';
		const where = this.pick(4) === 0 ? ` where ${this.#dependingCondition(inside, scope)}` : '';
		const otherwise =
			this.pick(5) === 0 && name !== 'SUM' ? ` else ${this.#literal(dimension)}` : '';
		return `${name}(${forced}${more} over ${over}${where}${otherwise})`;
	}

	/** Binds one or two sets, and writes a value that depends on each. */
	#gather(dimension: Dimension, scope: readonly AxisOf[]) {
		const found = this.#pickKnown((known) => known.kind === dimension && known.axes.length > 0);
		const inside = [...scope];
		const bind = (set: string): string => {
			if (!inside.some(({ name }) => name === set)) {
				inside.push({ name: set, set });
				return set;
			}
			const index = `i${this.#bound++}`;
			inside.push({ name: index, set });
			return `${index} in ${set}`;
		};
		if (!found) {
			const over = bind(this.#one(this.#sets).name);
			const unit = dimension === 0 ? '' : ` * ${this.#literal(dimension)}`;
			return { inside, over, forced: `ORD(${inside.at(-1)!.name})${unit}` };
		}
		const at = new Map<string, string>();
		const overs: string[] = [];
		for (const axis of found.axes) {
			if (overs.length > 0 && this.pick(3) > 0) continue;
			overs.push(bind(axis.set));
			const { name } = inside.at(-1)!;
			if (name !== axis.name) at.set(axis.name, name);
		}
		let forced = this.#reference(found, inside, at);
		if (dimension === 0 && this.pick(4) === 0) forced = `(${forced} * ${this.#leaf(0, inside)})`;
		return { inside, over: overs.join(' × '), forced };
	}

	#counted(scope: readonly AxisOf[], depth: number): string {
		const { pick } = this;
		const set = this.#sets.find(({ name }) => !scope.some((axis) => axis.name === name));
		if (!set) return this.#numbered(scope);
		const inside = [...scope, { name: set.name, set: set.name }];
		if (pick(3) === 0) {
			const { over, forced } = this.#gather(0, scope);
			return `${this.#one(['COUNT', 'PRODUCT'])}(${forced} over ${over})`;
		}
		const test = this.#dependingCondition(inside, scope);
		if (pick(3) > 0) return `COUNT(${test} over ${set.name})`;
		const value = this.#number(0, inside, depth - 2);
		return `SUM(${value} + ORD(${set.name}) over ${set.name} where ${test})`;
	}

	#invested(scope: readonly AxisOf[]): string {
		const found = this.#pickKnown(
			(known) =>
				known.kind === 0 &&
				known.axes.length > 0 &&
				known.axes.some((axis) => !scope.some(({ name }) => name === axis.name))
		);
		const axis = found?.axes.find(({ name }) => !scope.some((axisOf) => axisOf.name === name));
		if (!found || !axis || axis.name !== axis.set) return this.#numbered(scope);
		const flow = this.#reference(found, [...scope, axis], new Map());
		const rate = this.#one(['0.1', '0.05', '(-1)', this.#leaf(0, scope)]);
		return this.#one([
			`NPV(${rate}; ${flow} over ${axis.name})`,
			`IRR(${flow} over ${axis.name})`,
			`MIRR(${flow} over ${axis.name}; 0.1; 0.12)`,
			`PAYBACK(${flow} over ${axis.name})`,
			`RANK(${this.#leaf(0, scope)}; ${flow} over ${axis.name})`
		]);
	}

	/** A percentile, or the line through pairs of two quantities. */
	#line(scope: readonly AxisOf[]): string {
		const { over, forced } = this.#gather(0, scope);
		if (this.pick(2) === 0)
			return `PERCENTILE(${forced} over ${over}; ${this.#one(['0.5', '0', '1', '0.3', '1.5', this.#leaf(0, scope)])})`;
		const set = over.split(' ').at(-1)!;
		const index = over.includes(' × ') ? null : over.split(' ')[0]!;
		const x = index === null ? forced : `(ORD(${index}) + ${forced})`;
		const where =
			this.pick(4) === 0 && index !== null ? ` where ORD(${index}) > ${this.pick(2)}` : '';
		const y = index === null ? forced : `(${forced} - ORD(${index}) / 2 * ${set.length})`;
		return `${this.#one(['SLOPE', 'INTERCEPT'])}(${y}; ${x} over ${over}${where})`;
	}

	/** Shares, densities and quantiles, some of no distribution. */
	#normal(scope: readonly AxisOf[], depth: number): string {
		const dimension = this.pick(3) as Dimension;
		const [x, mean, sd] = [0, 1, 2].map(() => this.#number(dimension, scope, depth - 2));
		const standard = `NORMDIST(${this.#number(0, scope, depth - 1)}; 0; ${this.#one(['1', '2', '0'])}`;
		const plain = dimension === 0 ? [`NORMDIST(${x}; ${mean}; ${sd}; FALSE())`] : [];
		return this.#one([
			`${standard})`,
			`${standard}; FALSE())`,
			`NORMDIST(${x}; ${mean}; ${sd}; TRUE())`,
			`NORMINV(${this.#one(['0.05', '0.5', '0.999', this.#leaf(0, scope)])}; 0; ${this.#one(['1', this.#leaf(0, scope)])})`,
			...plain
		]);
	}

	/** Dates near and far, some of them none. */
	#dated(plain: () => string): string {
		const date = `DATE(${this.#one(['2027', '1900', '2000 + ' + plain()])}; ${plain()}; ${this.#one(['1', '29', '31', plain()])})`;
		return this.#one([
			`${this.#one(['YEAR', 'MONTH', 'DAY', 'ISOWEEKNUM', 'WEEKDAY'])}(${date})`,
			`WEEKDAY(${date}; ${this.#one(['1', '2', '3', '11', '14', '17', '4', plain()])})`,
			`((${date} - DATE(2020; 1; 1)) / 1[day])`
		]);
	}

	#numbered(scope: readonly AxisOf[]): string {
		const axis = scope.length > 0 ? this.#one(scope) : null;
		if (!axis) return this.#one(['PI()', '2', '0']);
		if (this.#setOf(axis.set).numbers && this.pick(2) === 0) return `NUMBER(${axis.name})`;
		return `ORD(${axis.name})`;
	}

	#condition(scope: readonly AxisOf[], depth: number): string {
		const { pick } = this;
		const compare = this.#one(['=', '<>', '<', '<=', '>', '>=']);
		if (depth > 0 && pick(4) === 0) {
			const other = this.#condition(scope, depth - 1);
			return this.#one([
				`AND(${this.#condition(scope, depth - 1)}; ${other})`,
				`OR(${this.#condition(scope, depth - 1)}; ${other})`,
				`NOT(${other})`
			]);
		}
		const way = pick(8);
		if (way === 0) {
			const found = this.#pickKnown((known) => known.kind === 'yes');
			if (found) return this.#reference(found, scope);
		}
		if (way === 1) {
			const { name } = this.#one(this.#sets);
			return `(${this.#member(name, scope, depth - 1)} ${compare} ${this.#member(name, scope, depth - 1)})`;
		}
		if (way === 2 && depth > 0) {
			const set = this.#sets.find(({ name }) => !scope.some((axis) => axis.name === name));
			if (set) {
				const inside = [...scope, { name: set.name, set: set.name }];
				return `${this.#one(['ANY', 'ALL'])}(${this.#dependingCondition(inside, scope)} over ${set.name})`;
			}
		}
		const dimension = this.#one<Dimension>([0, 0, 0, 1, 2]);
		return `(${this.#number(dimension, scope, depth - 1)} ${compare} ${this.#number(dimension, scope, depth - 1)})`;
	}

	/** A condition that depends on the innermost axis. */
	#dependingCondition(inside: readonly AxisOf[], _outside: readonly AxisOf[]): string {
		const axis = inside.at(-1)!;
		const compare = this.#one(['=', '<>', '<', '>=']);
		const found = this.#pickKnown(
			(known) => known.kind === 0 && known.axes.some(({ name }) => name === axis.name)
		);
		const dependent = found && this.pick(3) > 0 ? this.#reference(found, inside) : null;
		if (dependent) return `(${dependent} ${compare} ${this.#leaf(0, inside)})`;
		return `(ORD(${axis.name}) ${compare} ${1 + this.pick(3)})`;
	}

	#member(set: string, scope: readonly AxisOf[], depth: number): string {
		const { pick } = this;
		const axes = scope.filter((axis) => axis.set === set);
		const choices = (known: Known) => typeof known.kind === 'object' && known.kind.member === set;
		const way = pick(depth > 0 ? 9 : 5);
		if (way <= 1) {
			const found = this.#pickKnown(choices);
			// A choice must align by itself: an index in an index would go on for ever.
			const aligns = found?.axes.every(({ name }) => scope.some((axis) => axis.name === name));
			if (found && aligns) return found.name;
		}
		if (way === 2 && axes.length > 0) return this.#one(axes).name;
		if (way === 8) return `MEMBER(${set}; ${this.#number(0, scope, depth - 1)})`;
		if (depth > 0 && way >= 5 && !scope.some(({ name }) => name === set)) {
			const inside = [...scope, { name: set, set }];
			const test = this.#dependingCondition(inside, scope);
			if (way === 5) return `${this.#one(['FIRST', 'LAST'])}(${set} over ${set} where ${test})`;
			const found = this.#pickKnown(
				(known) => known.kind === 0 && known.axes.length === 1 && known.axes[0]!.name === set
			);
			if (found) return `${this.#one(['ARGMIN', 'ARGMAX'])}(${found.name} over ${set})`;
		}
		return `${set}.${this.#one(this.#setOf(set).ids)}`;
	}

	#pickKnown(fits: (known: Known) => boolean): Known | undefined {
		const fitting = this.#known.filter(fits);
		return fitting.length > 0 ? this.#one(fitting) : undefined;
	}

	#setOf(name: string) {
		return this.#sets.find((set) => set.name === name)!;
	}

	#one<T>(list: readonly T[]): T {
		return list[this.pick(list.length)]!;
	}
}

/** Inputs of a workbook, the base's or a scenario's, changed, cleared and taken back at random. */
export function randomEdit(workbook: Workbook, pick: Pick): Workbook {
	const quantities = workbook.sheets.flatMap((sheet) => sheet.quantities);
	const inputs = quantities.filter((quantity) => !quantity.fixed && quantity.value !== undefined);
	if (inputs.length === 0) return workbook;
	const input = inputs[pick(inputs.length)]!;
	const scenario = pick(workbook.scenarios.length);
	if (scenario === 0) {
		const value = edited(input.value!, pick);
		return {
			...workbook,
			sheets: workbook.sheets.map((sheet) => ({
				...sheet,
				quantities: sheet.quantities.map((each) => (each === input ? { ...each, value } : each))
			}))
		};
	}
	return {
		...workbook,
		scenarios: workbook.scenarios.map((each, at) => {
			if (at !== scenario) return each;
			const others = each.changes.filter(({ quantity }) => quantity !== input.name);
			const before = each.changes.find(({ quantity }) => quantity === input.name);
			if (before && pick(3) === 0) return { ...each, changes: others };
			const value = edited(before?.value ?? input.value!, pick);
			return { ...each, changes: [...others, { quantity: input.name, value }] };
		})
	};
}

function edited(values: Values, pick: Pick): Values {
	if (typeof values === 'object' && values !== null)
		return Object.fromEntries(
			Object.entries(values).map(([id, value]) => [id, pick(2) === 0 ? value : edited(value, pick)])
		);
	if (pick(6) === 0) return null;
	if (typeof values === 'boolean') return !values;
	return typeof values === 'string' ? values : NUMBERS[pick(NUMBERS.length)]!;
}
