/**
 * Where the settings of a study name scenarios, inputs, results and changes, by the table of kinds in
 * `study-schema.ts`: renaming, gaps, fingerprints, the canonical form and consistency all read it.
 *
 * A path goes through lists by itself: "cases.moves" is every move of every case.
 */
import type { Change } from './schema';
import { STUDY_PARTS, type Study } from './study-schema';

/** Whoever gathers what does not fit: `consistency/findings.ts`. */
export interface TakesFindings {
	add(path: readonly PropertyKey[], code: string, message: string, remedy: string): void;
}

/** An input or a result, or some of its cells. */
export type StudyCells = {
	readonly quantity: string;
	readonly members?: readonly (string | null)[] | undefined;
};
export type StudyRange =
	{ readonly low: number; readonly high: number } | { readonly from: number; readonly to: number };

/** The paths in `T` at which something of the type `Found` stands. */
type Inside<T> = NonNullable<T> extends readonly (infer Entry)[] ? Inside<Entry> : NonNullable<T>;
type PathTo<T, Found> = {
	[Field in keyof T & string]:
		| (Inside<T[Field]> extends Found ? Field : never)
		| (Inside<T[Field]> extends object ? `${Field}.${PathTo<Inside<T[Field]>, Found>}` : never);
}[keyof T & string];

export interface StudyParts<S extends Study> {
	readonly scenarios: readonly PathTo<S, string>[];
	/** Inputs that are moved as numbers. */
	readonly moved?: readonly PathTo<S, StudyCells>[];
	/** Inputs of any type. */
	readonly named?: readonly PathTo<S, StudyCells>[];
	/** Changes as a scenario has them. */
	readonly changes?: readonly PathTo<S, Change>[];
	/** Results besides the one that every study asks about. */
	readonly results?: readonly PathTo<S, StudyCells>[];
	/** Ranges whose ends must differ. */
	readonly ranges?: readonly PathTo<S, StudyRange>[];
	/** Whether plans stay as they stand where its settings do not say: left out, they follow. */
	readonly keepsPlans?: true;
	/** What else must fit within the settings. */
	check?(findings: TakesFindings, study: S, path: readonly PropertyKey[]): void;
}

/** The table's entry as functions of any study read it: by paths that are texts. */
type AnyParts = {
	readonly [Field in Exclude<keyof StudyParts<Study>, NoPath>]: readonly string[];
};
type NoPath = 'check' | 'keepsPlans';
export const partsOf = (study: Study): Partial<AnyParts> & Pick<StudyParts<Study>, NoPath> =>
	STUDY_PARTS[study.kind];

/** What a study does with plans that its points make stale. */
export const plansOf = (study: Study): NonNullable<Study['plans']> =>
	study.plans ?? (partsOf(study).keepsPlans ? 'keep' : 'follow');

export interface Part<T> {
	readonly part: T;
	/** Where it stands in the study. */
	readonly place: readonly PropertyKey[];
	/** What it stands in, as far as that has labels, the outermost first. */
	readonly within: readonly string[];
}

/** All that stands at these paths, in their order; what is left out is passed over. */
export const partsAt = <T>(study: Study, paths: readonly string[] = []): Part<T>[] =>
	paths.flatMap((path) => found<T>(study, path.split('.'), [], []));

function found<T>(
	value: unknown,
	fields: readonly string[],
	place: readonly PropertyKey[],
	within: readonly string[]
): Part<T>[] {
	if (value === undefined) return [];
	if (Array.isArray(value))
		return value.flatMap((entry, i) => found<T>(entry, fields, [...place, i], within));
	const [field, ...rest] = fields;
	if (field === undefined) return [{ part: value as T, place, within }];
	const own = value as Readonly<Record<string, unknown>>;
	const labels = place.length > 0 && typeof own['label'] === 'string' ? [own['label']] : [];
	return found<T>(own[field], rest, [...place, field], [...within, ...labels]);
}

/** The study with each of these changed; what becomes undefined goes out of its list. */
export function withPartsAt<T>(
	study: Study,
	paths: readonly string[] | undefined,
	change: (part: T) => T | undefined
): Study {
	return (paths ?? []).reduce(
		(next, path) => changed(next, path.split('.'), change as (part: unknown) => unknown) as Study,
		study
	);
}

function changed(
	value: unknown,
	fields: readonly string[],
	change: (part: unknown) => unknown
): unknown {
	if (value === undefined) return undefined;
	if (Array.isArray(value))
		return value
			.map((entry) => changed(entry, fields, change))
			.filter((entry) => entry !== undefined);
	const [field, ...rest] = fields;
	if (field === undefined) return change(value);
	const own = value as Readonly<Record<string, unknown>>;
	if (own[field] === undefined) return own;
	return { ...own, [field]: changed(own[field], rest, change) };
}
