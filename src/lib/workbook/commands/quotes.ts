/** Keeping quotes and what heads them. Nothing that is computed changes: what a quote holds, it holds for itself. */
import { axesOf } from '../axes';
import { findQuantity } from '../lookup';
import {
	keptQuoteSchema,
	letterheadSchema,
	type Grounds,
	type QuoteEntry
} from '../quote-list-schema';
import { findQuote, quoteName } from '../quotes';
import type { Workbook } from '../schema';
import { edited, refused, type Edit, type QuoteCommand } from './command';
import { renamedFrozenParts, renamedValues, type Renames } from './frozen';
import { mapped } from './lists';
import { withList } from './parts';
import { shapeRefusal } from './refusal';

export function editQuote(workbook: Workbook, command: QuoteCommand): Edit {
	if (command.kind === 'set_letterhead') {
		const { letterhead: _before, ...rest } = workbook;
		const { letterhead } = command;
		const bad = shapeRefusal(letterheadSchema, letterhead, 'The letterhead');
		if (bad) return bad;
		return edited(Object.keys(letterhead).length > 0 ? { ...workbook, letterhead } : rest);
	}
	const all = workbook.quotes ?? [];
	if (command.kind === 'remove_quote') {
		const quote = findQuote(workbook, command.id);
		return quote
			? withList(
					workbook,
					'quotes',
					all.filter((one) => one !== quote)
				)
			: refused('unknown-quote', 'This quote is not in the workbook any more.');
	}
	const { quote } = command;
	const bad = shapeRefusal(keptQuoteSchema, quote, `Quote ${quoteName(quote)}`);
	if (bad) return bad;
	const before = findQuote(workbook, quote.id);
	return withList(
		workbook,
		'quotes',
		before ? mapped(all, (one) => (one === before ? quote : one)) : [...all, quote]
	);
}

/** The workbook with what its quotes name under new names; what they hold stays. `before` still has the old ones. */
export function mapQuoteNames(workbook: Workbook, before: Workbook, renames: Renames): Workbook {
	if (!workbook.quotes) return workbook;
	const quotes = mapped(workbook.quotes, (quote) => {
		const items = mapped(quote.items, (item) => {
			const entries = mapped(item.entries, (entry) => renamedEntry(entry, before, renames));
			const grounds = item.grounds && renamedGrounds(item.grounds, before, renames);
			if (entries === item.entries && grounds === item.grounds) return item;
			return { ...item, entries, ...(grounds && { grounds }) };
		});
		return items === quote.items ? quote : { ...quote, items };
	});
	return quotes === workbook.quotes ? workbook : { ...workbook, quotes };
}

/** The sets of a quantity's axes, and the one that its values choose from, as they are today. */
function setsOf(before: Workbook, name: string) {
	const quantity = findQuantity(before, name);
	return {
		per: quantity ? axesOf(quantity).map(({ set }) => set) : [],
		of: typeof quantity?.type === 'object' ? quantity.type.member_of : undefined
	};
}

function renamedEntry(entry: QuoteEntry, before: Workbook, renames: Renames): QuoteEntry {
	const { per, of } = setsOf(before, entry.quantity);
	const quantity = renames.quantity?.(entry.quantity) ?? entry.quantity;
	const to = (set: string | undefined, id: string) =>
		set === undefined ? id : (renames.member?.(set, id) ?? id);
	const at = entry.at && mapped(entry.at, (id, i) => to(per[i], id));
	const value = typeof entry.value === 'string' ? to(of, entry.value) : entry.value;
	return quantity === entry.quantity && at === entry.at && value === entry.value
		? entry
		: { quantity, ...(at && { at }), value };
}

function renamedGrounds(grounds: Grounds, before: Workbook, renames: Renames): Grounds {
	const { quantities, sets } = renamedFrozenParts(
		{ quantities: grounds.figures, ...(grounds.sets && { sets: grounds.sets }) },
		renames
	);
	const inputs = grounds.inputs && renamedInputs(grounds.inputs, before, renames);
	return quantities === grounds.figures && sets === grounds.sets && inputs === grounds.inputs
		? grounds
		: { ...grounds, figures: [...quantities], ...(sets && { sets }), ...(inputs && { inputs }) };
}

type GroundInputs = NonNullable<Grounds['inputs']>;

function renamedInputs(inputs: GroundInputs, before: Workbook, renames: Renames): GroundInputs {
	let changed = false;
	const entries = Object.entries(inputs).map(([name, value]) => {
		const to = renames.quantity?.(name) ?? name;
		const free = Object.hasOwn(inputs, to) ? name : to;
		const { per, of } = setsOf(before, name);
		const { member } = renames;
		const next = member ? renamedValues({ sets: per, of }, value, member) : value;
		if (free !== name || next !== value) changed = true;
		return [free, next] as const;
	});
	return changed ? Object.fromEntries(entries) : inputs;
}

/** What was kept of an input that means another thing from now on goes: it cannot be held against what stands there. */
export function withoutQuoteInput(workbook: Workbook, name: string): Workbook {
	if (!workbook.quotes) return workbook;
	const quotes = mapped(workbook.quotes, (quote) => {
		const items = mapped(quote.items, (item) => {
			if (!item.grounds?.inputs || !Object.hasOwn(item.grounds.inputs, name)) return item;
			const { [name]: _gone, ...inputs } = item.grounds.inputs;
			return { ...item, grounds: { ...item.grounds, inputs } };
		});
		return items === quote.items ? quote : { ...quote, items };
	});
	return quotes === workbook.quotes ? workbook : { ...workbook, quotes };
}
