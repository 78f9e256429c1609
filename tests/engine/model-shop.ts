/** A workbook with two lines and a few scenarios, small enough to be worked by hand. */
import type { Model } from '$lib/engine/model';
import { cellAt } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import {
	VERSION,
	type Quantity,
	type Scalar,
	type Scenario,
	type Values,
	type Workbook
} from '$lib/workbook/schema';
import { missing, type Entry } from './interpreter-hand';

const quantity = (name: string, rest: Omit<Quantity, 'name' | 'label'>): Quantity => ({
	name,
	label: name,
	...rest
});

export const scenario = (
	id: string,
	parent: string,
	changes: Record<string, Values>,
	against?: string
): Scenario => ({
	id,
	title: id,
	parent,
	...(against === undefined ? {} : { against }),
	changes: Object.entries(changes).map(([name, value]) => ({ quantity: name, value }))
});

/** hours per line × speed = metres; total gathers them; gain compares with the reference. */
export const shop = (scenarios: readonly Scenario[] = []): Workbook => ({
	format: 'metrewright',
	version: VERSION,
	title: 'Two lines',
	units: [{ symbol: 'EUR' }],
	sets: [
		{
			name: 'line',
			label: 'Line',
			members: [{ id: 'L1' }, { id: 'L2' }, { id: 'L3' }],
			present: 'installed'
		},
		{ name: 'grade', label: 'Grade', members: [{ id: 'blue' }, { id: 'red' }] }
	],
	sheets: [
		{
			title: 'Lines',
			quantities: [
				quantity('installed', {
					type: 'yes_no',
					per: ['line'],
					value: { L1: true, L2: true, L3: false }
				}),
				quantity('speed', {
					unit: 'm/min',
					per: ['line'],
					value: { L1: 10, L2: 20, L3: 30 },
					range: { above: 0, max: 100 }
				}),
				quantity('hours', { unit: 'h', per: ['line'], value: { L1: 1, L2: 2, L3: 3 } }),
				quantity('grade_of', {
					type: { member_of: 'grade' },
					per: ['line'],
					value: { L1: 'blue', L2: 'red', L3: 'red' }
				}),
				quantity('price', { unit: 'EUR/m', per: ['grade'], value: { blue: 2, red: 3 } }),
				quantity('metres', { unit: 'm', per: ['line'], formula: 'speed * hours' }),
				quantity('revenue', {
					unit: 'EUR',
					per: ['line'],
					formula: 'metres * price[grade_of]'
				}),
				quantity('total', { unit: 'EUR', formula: 'SUM(revenue over line)' }),
				quantity('gain', { unit: 'EUR', formula: 'total - total[reference]' }),
				quantity('note_free', { unit: 'EUR', value: null })
			]
		}
	],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }, ...scenarios]
});

/** What a scenario says of one cell. */
export function valueOf(model: Model, id: string, name: string, ...members: string[]): Entry {
	const results = model.results(id);
	const cell = cellIn(model, name, ...members);
	return results.states[cell] === OK ? results.values[cell]! : missing(results.states[cell]!);
}

export function cellIn(model: Model, name: string, ...members: string[]): number {
	const place = model.layout.byName.get(name)!;
	return cellAt(
		place,
		members.map((id, axis) => model.layout.ordinals.get(place.axes[axis]!.set)!.get(id)!)
	);
}

/** Enters one value, and says which scenarios it changed. */
export function enter(
	model: Model,
	id: string,
	name: string,
	at: readonly string[],
	value: Scalar | undefined
): readonly string[] {
	const done = model.apply({
		kind: 'set_inputs',
		scenario: id,
		entries: [{ quantity: name, at, value }]
	});
	if (!done.ok) throw new Error(done.problem.message);
	return done.changed;
}
