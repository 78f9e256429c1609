/** Ticking lines of the review list off, and opening them again. Nothing that is computed changes. */
import { tickSchema } from '../review-schema';
import { axesOf } from '../axes';
import { quantityPlaces } from '../lookup';
import type { Tick, Workbook } from '../schema';
import { edited, type Command, type Edit } from './command';
import { mapped } from './lists';
import { shapeRefusal } from './refusal';

type SetTicks = Extract<Command, { readonly kind: 'set_ticks' }>;

export function setTicks(workbook: Workbook, { ticks }: SetTicks): Edit {
	const { reviewed, ...rest } = workbook;
	const next = new Map<string, Tick>((reviewed ?? []).map((tick) => [tick.id, tick]));
	for (const tick of ticks) {
		if (!('of' in tick)) next.delete(tick.id);
		else {
			const bad = shapeRefusal(tickSchema, tick, 'The line');
			if (bad) return bad;
			next.set(tick.id, tick);
		}
	}
	// The list goes with its last line, so that opening the only one leaves the file as it was.
	return edited(next.size > 0 ? { ...rest, reviewed: [...next.values()] } : rest);
}

/** Lines go by the name of their quantity, which stands second: they are known again under a new one. */
export const withQuantityRenamedInTicks = (workbook: Workbook, from: string, to: string) =>
	mapTicks(workbook, ([kind, name, ...rest]) => [kind, name === from ? to : name, ...rest]);

/** Then come the members that a line is about, those of its quantity. */
export function withMemberRenamedInTicks(
	workbook: Workbook,
	set: string,
	from: string,
	to: string
): Workbook {
	const places = quantityPlaces(workbook);
	return mapTicks(workbook, ([kind, name, ...rest]) => {
		const quantity = places.get(name ?? '')?.quantity;
		const isOfSet = quantity && axesOf(quantity).some((axis) => axis.set === set);
		if (!isOfSet) return [kind, name, ...rest];
		const members = ` ${rest.join(' ')} `.replace(` ${from} `, () => ` ${to} `).trim();
		return [kind, name, ...(members ? [members] : [])];
	});
}

type Words = readonly (string | undefined)[];

function mapTicks(workbook: Workbook, rename: (words: Words) => Words): Workbook {
	if (!workbook.reviewed) return workbook;
	const reviewed = mapped(workbook.reviewed, (tick) => {
		const id = rename(tick.id.split(' ')).join(' ');
		return id === tick.id ? tick : { ...tick, id };
	});
	return reviewed === workbook.reviewed ? workbook : { ...workbook, reviewed };
}
