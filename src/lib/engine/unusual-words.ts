/** What is said of a number outside of where it usually lies: which one it is, how much, what is usual, what to do. */
import { quantityOf, membersOf, type Layout } from './layout';
import { withUnit } from './naming';
import { rangeText } from './number-words';

export function unusualWords(layout: Layout, cell: number, value: number): string {
	const quantity = quantityOf(layout, cell)?.quantity;
	if (!quantity?.usual) return '';
	const unit = quantity.unit === '1' ? '' : (quantity.unit ?? '');
	const name = [quantity.label, membersOf(layout, cell).join(', ')].filter(Boolean).join(' of ');
	return `${name} is ${withUnit(value, unit)}, usual is ${rangeText(quantity.usual, unit)}. Look at its digits and its unit; if it is right, widen the usual range.`;
}
