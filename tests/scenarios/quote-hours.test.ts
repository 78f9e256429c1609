/**
 * What the Quote sheet charges an order for its hours, an estimate from the plan as it stands, against the plan made
 * again without those hours: by the independent programme, solved by GLPK 5.0 (GNU Linear Programming Kit), which the
 * app does not use.
 */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read } from '../reference/shipped';
import { allocate } from './independent/allocation';
import { allocationOf } from './independent/model';
import { worksOf } from './independent/works';
import { MONTH_NAMES } from './workbook-plan';

const works = worksOf('base');
const without = allocationOf('base', 0).contribution;

interface Order {
	readonly product: string;
	readonly month: string;
	/** m */
	readonly metres: number;
}

/** EUR: what the sheet charges, what the plan loses, and one per cent of the floor. */
function charged({ product, month, metres }: Order) {
	const model = openShipped('marram');
	enter(
		model,
		['quote_product', [], product],
		['quote_month', [], month],
		['quote_quantity', [], metres]
	);
	const line = model.layout.sets.get('line')!.members[read(model, 'quote_line')]!.id;
	const hours = read(model, 'quote_hours');
	const more = { of: line, month: MONTH_NAMES.indexOf(month), hours: -hours };
	return {
		estimate: hours * read(model, 'quote_hour_value'),
		lost: without - allocate(works, 0, { more }).contribution,
		percent: (read(model, 'quote_floor') * metres) / 100
	};
}

const orderOf = (product: string, month: string, km: number): Order => ({
	...{ product, month },
	metres: km * 1000
});

describe('the hours of an order', () => {
	// Orders that fit what lines and months can give, or that take hours which are scarce anyway.
	it.each([
		orderOf('PX15B', 'Jan', 400),
		orderOf('PX15B', 'Oct', 60),
		orderOf('PX15B', 'Oct', 9),
		orderOf('PX15B', 'Jul', 240),
		orderOf('PX15B', 'Dec', 240),
		orderOf('PX22B', 'Jan', 240),
		orderOf('PB15B', 'Oct', 100),
		orderOf('RT15B', 'Oct', 240),
		orderOf('RT15B', 'Aug', 240)
	])(
		'of $metres m of $product in $month cost what the plan loses, to 1 % of the floor',
		(order) => {
			const { estimate, lost, percent } = charged(order);
			expect(Math.abs(estimate - lost) / percent).toBeLessThan(1);
		}
	);

	it.each([
		orderOf('PB15B', 'Jan', 240),
		orderOf('PB22B', 'Dec', 240),
		orderOf('PX22B', 'Jul', 240),
		orderOf('PX22B', 'Dec', 240)
	])('of $metres m of $product in $month, a third of a month and more, to 4 %', (order) => {
		const { estimate, lost, percent } = charged(order);
		expect(Math.abs(estimate - lost) / percent).toBeLessThan(4);
	});

	// Half of the month's hours, in months whose last hours that can move run out: the widest gap that was found.
	it.each([orderOf('PX15B', 'Jul', 400), orderOf('PX15B', 'Dec', 400)])(
		'of $metres m of $product in $month, half of a month, to 11 %',
		(order) => {
			const { estimate, lost, percent } = charged(order);
			expect(Math.abs(estimate - lost) / percent).toBeLessThan(11);
		}
	);

	it('of an order in a quiet month do not cost the sales of a busy one', () => {
		const { estimate, lost } = charged(orderOf('PX15B', 'Jan', 400));
		expect(lost).toBeLessThan(300);
		expect(estimate).toBeLessThan(300);
	});

	it('that neither another line nor an earlier month can give cost the sales that are lost', () => {
		const model = openShipped('marram');
		// In August, RT15B can only come from what July leaves room for: the rest of the order loses sales.
		enter(model, ['quote_product', [], 'RT15B'], ['quote_month', [], 'Aug']);
		const room =
			(read(model, 'stock_max', 'RT15B') - read(model, 'stock', 'RT15B', 'Jul', 'today')) *
			(read(model, 'hours_per_metre', 'RT15B', 'L7') / 1000);
		expect(read(model, 'quote_reach', 'Aug', 'L7')).toBeCloseTo(room, 6);
		enter(model, ['quote_quantity', [], 240_000]);
		const hours = read(model, 'quote_hours');
		const own = read(model, 'hour_value', 'Aug', 'L7');
		const lost = read(model, 'contribution_on_line', 'RT15B', 'L7') * 1000;
		const worth = lost / read(model, 'hours_per_metre', 'RT15B', 'L7');
		const cost = room * own + (hours - read(model, 'line_hours_free', 'L7', 'Aug') - room) * worth;
		expect(hours * read(model, 'quote_hour_value')).toBeCloseTo(cost, 6);
	});
});
