/**
 * What each kind of study says of itself. The folder `kinds/` has a folder for each, called as the kind is: its words
 * (with the `kind` below), its `View.svelte` and its `Settings.svelte`; `tests/ui/studies/kinds.test.ts` asks for all three.
 */
import type { PlainTable } from '$lib/exchange/csv/write';
import type { ResultOf } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import { STUDY_KINDS, type Study, type StudyKind, type StudyOf } from '$lib/workbook/study-schema';
import type { Shown } from './shown';

export interface KindWords<K extends StudyKind> {
	readonly name: string;
	readonly asks: string;
	/** Where it may plan anew, behind "planned anew", and what it has many of. */
	readonly atEach: string;
	readonly points: string;
	/** Of the field for its scenario, where it is more than the one that is asked about. */
	readonly scenarioLabel?: string;
	/** The settings of a new one. */
	readonly fresh: (start: FreshStart) => SettingsOf<K>;
	/** The figures of the answer, by which unit and digits of all of them are chosen. */
	readonly figures: (result: ResultOf<K>, study: StudyOf<K>) => readonly number[];
	/** What stands around the drawing of the answer, and its table. */
	readonly said: (workbook: Workbook, study: StudyOf<K>, result: ResultOf<K>, shown: Shown) => Said;
	/** The few numbers that are kept of a run. */
	readonly headline: (
		result: ResultOf<K>,
		/** Of the result that the study asks about. */
		unit: string | undefined,
		unitOf: (quantity: string) => string | undefined
	) => readonly Headline[];
}

export interface Said {
	readonly title: string;
	readonly line: string;
	readonly table: PlainTable;
	/** For those who do not see the drawing. */
	readonly summary: string;
}

export interface Headline {
	readonly label: string;
	readonly value: number;
	readonly unit?: string | undefined;
}

/** What only studies of one kind have. */
type SettingsOf<K extends StudyKind> = Omit<
	StudyOf<K>,
	'kind' | 'name' | 'title' | 'note' | 'quantity' | 'members' | 'ran'
>;

/** Where a new study may start from. */
export interface FreshStart {
	readonly base: string;
	readonly selected: string;
	/** The selected scenario, or another where that is the base. */
	readonly other: string;
	/** Two inputs over a range. */
	readonly ranges: readonly [FreshRange, FreshRange];
}

interface FreshRange {
	readonly quantity: string;
	readonly mode: 'scale';
	readonly from: number;
	readonly to: number;
}

const found = import.meta.glob<KindWords<StudyKind>>('./kinds/*/words.ts', {
	eager: true,
	import: 'kind'
});

/** What stands in the folder of a kind, of all that was found there. */
export function ofKind<T>(all: Readonly<Record<string, T>>, kind: StudyKind, file: string): T {
	const own = all[`./kinds/${kind.replaceAll('_', '-')}/${file}`];
	if (own === undefined)
		throw new RangeError(`There is no ${file} for studies of the kind ${kind}.`);
	return own;
}

/** Of a study's own kind: what it is handed must be of the same kind. */
export const wordsOf = ({ kind }: Pick<Study, 'kind'>): KindWords<StudyKind> =>
	ofKind(found, kind, 'words.ts');

export const kindChoices = () => STUDY_KINDS.map((kind) => ({ kind, ...wordsOf({ kind }) }));
