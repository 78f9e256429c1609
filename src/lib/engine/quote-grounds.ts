/**
 * What a quote stands on, kept with it as data: every figure of its page, and the inputs that its prices were computed
 * from. Of what is per product, customer or line, that of the quote's own; else every quote would hold the plant.
 */
import { pictureQuantities } from '$lib/workbook/picture-names';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { Grounds } from '$lib/workbook/quote-list-schema';
import { axesOf } from '$lib/workbook/axes';
import { withValues, type ValueEntry } from '$lib/workbook/values';
import { frozenFigures, frozenSets, scalarOf } from './frozen';
import { membersOf, type Layout } from './layout';
import type { Plan } from './plan';
import type { Results } from './results';
import { OK } from './state';

/** An input of more cells than this is a table of the plant, such as the hours of shift patterns: too much for each quote to hold. */
const MOST_CELLS = 12;

/** By set, the member that the order is about; null where the order leaves the choice open. */
export function chosenMembers(
	layout: Layout,
	results: Results,
	picture: QuotePicture
): ReadonlyMap<string, string | null> {
	const chosen = new Map<string, string | null>();
	const names = [...picture.order, ...(picture.taken_by === undefined ? [] : [picture.taken_by])];
	for (const name of names) {
		const place = layout.byName.get(name);
		const type = place?.quantity.type;
		if (!place || place.count !== 1 || typeof type !== 'object') continue;
		if (chosen.has(type.member_of)) continue;
		const has = results.states[place.base] === OK;
		const members = layout.sets.get(type.member_of)?.members;
		chosen.set(type.member_of, (has && members?.[results.values[place.base]!]?.id) || null);
	}
	return chosen;
}

/** Without what a list of prices is made of and what the plan is asked by: these are of the plant. */
function onPage({ price_list: _list, tender, ...picture }: QuotePicture): QuotePicture {
	if (!tender) return picture;
	const { plan: _plan, dated: _dated, ...rest } = tender;
	return { ...picture, tender: rest };
}

/** The quantities of a quote's page: those of its picture, and the cautions of the order's sheet. */
export function pageOf(layout: Layout, picture: QuotePicture): ReadonlySet<string> {
	const sheet = layout.byName.get(picture.price)?.sheet;
	const cautions = layout.quantities.filter(
		({ quantity, sheet: own }) => quantity.caution && own === sheet
	);
	return new Set([
		...pictureQuantities(onPage(picture)).map(([, name]) => name),
		...cautions.map(({ quantity }) => quantity.name)
	]);
}

export function figuresOf(
	layout: Layout,
	results: Results,
	picture: QuotePicture
): Pick<Grounds, 'figures' | 'sets'> {
	const page = pageOf(layout, picture);
	const offered = new Set([...picture.order, ...(picture.terms ?? [])]);
	const chosen = chosenMembers(layout, results, picture);
	const figures = frozenFigures(
		layout,
		results,
		// What the page shows for all months or sizes, it shows in full; terms, for the customer in question.
		({ quantity }, at) => !offered.has(quantity.name) || isOfOrder(axesOf(quantity), at, chosen),
		(name) => page.has(name)
	).map(({ formula: _formula, ...rest }) => rest);
	const sets = frozenSets(layout, figures, true);
	return { figures, ...(sets.length > 0 && { sets }) };
}

const isOfOrder = (
	axes: readonly { readonly set: string }[],
	at: readonly string[],
	chosen: ReadonlyMap<string, string | null>
): boolean => axes.every(({ set }, i) => !chosen.has(set) || chosen.get(set) === at[i]);

/** The inputs behind the prices of a quote, by quantity. */
export function inputsBehind(
	plan: Plan,
	results: Results,
	picture: QuotePicture
): NonNullable<Grounds['inputs']> {
	const { layout } = plan;
	const chosen = chosenMembers(layout, results, picture);
	const { starts, targets } = plan.precedents;
	const heads = [picture.price, picture.floor, picture.target, picture.margin, picture.invoice];
	const found = new Set(heads.flatMap((name) => layout.byName.get(name)?.base ?? []));
	// The set grows while it is walked.
	for (const cell of found)
		for (let i = starts[cell]!; i < starts[cell + 1]!; i++)
			if (belongs(layout, targets[i]!, chosen)) found.add(targets[i]!);
	const entries = new Map<number, ValueEntry[]>();
	for (const cell of [...found].sort((a, b) => a - b)) {
		if (cell >= layout.cells || plan.roots[cell] !== -1 || results.states[cell] !== OK) continue;
		const place = layout.quantityOfCell[cell]!;
		const { quantity } = layout.quantities[place]!;
		const value = scalarOf(layout, quantity, results.values[cell]!);
		entries.set(place, [...(entries.get(place) ?? []), { at: membersOf(layout, cell), value }]);
	}
	return Object.fromEntries(
		[...entries].flatMap(([place, list]) => {
			const { name, fixed } = layout.quantities[place]!.quantity;
			const value = withValues(undefined, list);
			return value === undefined || fixed || list.length > MOST_CELLS ? [] : [[name, value]];
		})
	);
}

function belongs(
	layout: Layout,
	cell: number,
	chosen: ReadonlyMap<string, string | null>
): boolean {
	// Beyond the layout lie the lifted terms, which are of nobody.
	if (cell >= layout.cells) return true;
	const { axes } = layout.quantities[layout.quantityOfCell[cell]!]!;
	return axes.length === 0 || isOfOrder(axes, membersOf(layout, cell), chosen);
}
