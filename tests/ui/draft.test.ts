/** What the editor of a quantity leaves alone comes back as it was. */
import { describe, expect, it } from 'vitest';
import { draftOf, quantityOf } from '$lib/ui/editor/draft';
import { QUANTITY_FIELDS } from '$lib/workbook/quantity-words';
import { quantitySchema, type Quantity } from '$lib/workbook/schema';
import { plant } from '../workbook/plant';

/** Between them they have every field. */
const everything: Quantity[] = [
	{
		...{ name: 'made', label: 'Made', type: 'number', unit: 'km', per: ['product', 'line'] },
		other_names: ['output', 'metres made'],
		...{ in: ['runs_on'], where: 'speed > 0', value: 3, whole: true },
		...{ range: { min: 0, max: 60.5 }, usual: { min: 1.5, max: 30 } },
		...{ shown: 'year', digits: 5, note: 'n', source: 's' },
		...{ date: '2026-11-24', spread: { min: 1, likely: 2, max: 3 }, open: true },
		check: { message: 'c', tolerance: 0.1 },
		caution: { message: 'w' }
	},
	{ name: 'days', label: 'Days', fixed: true, value: 5, range: { above: 0, below: 8 } },
	{
		...{ name: 'rent', label: 'Rent', per: ['product', 'period'], formula: 'rent_set' },
		path: { set_by: 'rent_set', moved_by: 'rent_raised' }
	},
	{ name: 'sum', label: 'Sum', formula: { by: 'product', cases: { PX20: '1', PX15B: 'input' } } }
];
const again = (quantity: Quantity) => {
	const made = quantityOf(draftOf(quantity, 0, 'en'), quantity, 'en');
	return made.ok ? made.quantity : made.message;
};

describe('a quantity in its editor', () => {
	it('has words for every field that it can have', () => {
		expect([...QUANTITY_FIELDS].sort()).toEqual(Object.keys(quantitySchema.shape).sort());
		const present = new Set(everything.flatMap((quantity) => Object.keys(quantity)));
		expect([...present].sort()).toEqual([...QUANTITY_FIELDS].sort());
	});

	it.each([...everything, ...plant.sheets.flatMap(({ quantities }) => quantities)])(
		'$name that nobody changed comes back as it was',
		(quantity) => {
			const { type, ...rest } = quantity;
			// A number is what is meant where no type is said.
			expect(again(quantity)).toEqual(type === 'number' ? rest : quantity);
		}
	);
});
