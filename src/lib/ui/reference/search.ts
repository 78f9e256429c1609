/** What of the reference is shown for the words that a reader typed: every word must occur in a line. */
import { functionEntries, type FunctionEntry } from '$lib/formula/reference';
import { unitEntries, type UnitEntry } from '$lib/units/reference';
import type { UnitDefinition } from '$lib/units/unit';

export interface Shown {
	readonly gathering: readonly FunctionEntry[];
	readonly others: readonly FunctionEntry[];
	readonly units: readonly UnitEntry[];
	/** The units that the workbook adds. */
	readonly own: readonly UnitDefinition[];
}

/** Without capitals and accents. */
const plain = (text: string) => text.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');

const functions = functionEntries();
const units = unitEntries();

export function shownFor(typed: string, ownUnits: readonly UnitDefinition[]): Shown {
	const words = plain(typed).split(/\s+/).filter(Boolean);
	const holds = (...texts: readonly (string | undefined)[]) => {
		const all = plain(texts.join(' '));
		return words.every((word) => all.includes(word));
	};
	const found = functions.filter(({ name, signature, help, example }) =>
		holds(name, signature, help, example.formula)
	);
	return {
		gathering: found.filter(({ kind }) => kind === 'aggregate'),
		others: found.filter(({ kind }) => kind === 'scalar'),
		units: units.filter(({ symbol, label, measures, dimension, aliases }) =>
			holds(symbol, label, measures, dimension, ...aliases)
		),
		own: ownUnits.filter(({ symbol, label, equals }) => holds(symbol, label, equals))
	};
}
