/**
 * Each kind of picture in one table: which of its fields name a set, which are no names, and what it asks of what it
 * names. All other texts in a picture are quantities; renaming, saving and consistency read this.
 */
import { axesOf } from './axes';
import type { Findings } from './consistency/findings';
import { checkMember } from './consistency/front-names';
import { findQuantity, findSet } from './lookup';
import type { PaperPart } from './paper-schema';
import type { Picture, Workbook } from './schema';

type PictureKind = Picture['kind'];
type PictureOf<K extends PictureKind> = Extract<Picture, { readonly kind: K }>;
type Path = readonly PropertyKey[];

export interface PictureParts<P extends Picture> {
	/** Fields that name a set, wherever in it they stand. */
	readonly sets: readonly string[];
	/** Besides kind, title and note: words and members of sets. */
	readonly plain?: readonly string[];
	/** The set whose members it gives roles to. */
	roleSet?(workbook: Workbook, picture: P): string | undefined;
	/** What it asks of the quantities that it names. */
	check?(findings: Findings, picture: P, path: Path): void;
}

const PICTURE_PARTS: { readonly [K in PictureKind]: PictureParts<PictureOf<K>> } = {
	cross_section: {
		sets: ['subject', 'layer'],
		plain: ['roles'],
		roleSet(workbook, { material }) {
			const type = findQuantity(workbook, material)?.type;
			return typeof type === 'object' ? type.member_of : undefined;
		},
		check: checkMaterial
	},
	build_up: { sets: ['subject', 'part'], plain: ['roles'], roleSet: (_, { part }) => part },
	items: { sets: ['subject'], check: checkItems },
	ranking: { sets: [], check: checkRanking },
	months: { sets: ['period'], check: checkMonths },
	payback: { sets: ['year'] },
	capacity: { sets: ['month'], check: checkLoads },
	ways_out: { sets: [] },
	patterns: { sets: ['pattern', 'hour'], plain: ['against'], check: checkPatterns },
	week: { sets: ['pattern', 'weekday', 'hour'] },
	calendar: { sets: ['month', 'day', 'weekday', 'holiday', 'shut_down'] },
	bridge: { sets: [] },
	// A step that is gone is explained no more, and nothing else is amiss.
	waterfall: { sets: ['month'], plain: ['explains'], check: checkWaterfall },
	audit: { sets: ['case', 'month'], check: checkAudit },
	quote: { sets: [], plain: ['scenario', 'words', 'member'] },
	paper: { sets: ['set'], plain: ['name', 'question', 'text'], check: checkPaper }
};

/** The entry of a picture's own kind. */
export const partsOf = (picture: Picture): PictureParts<Picture> =>
	PICTURE_PARTS[picture.kind] as unknown as PictureParts<Picture>;

function checkMaterial(
	findings: Findings,
	{ material }: PictureOf<'cross_section'>,
	path: Path
): void {
	const { workbook } = findings;
	const quantity = findQuantity(workbook, material);
	const type = quantity?.type;
	if (!quantity || (typeof type === 'object' && findSet(workbook, type.member_of))) return;
	findings.add(
		[...path, 'material'],
		'not-a-choice',
		`${material} does not hold a member of a set of materials`,
		'Name a choice.'
	);
}

function checkItems(
	findings: Findings,
	{ subject, of, columns }: PictureOf<'items'>,
	path: Path
): void {
	const type = findQuantity(findings.workbook, of)?.type;
	const axes = setsOf(findings.workbook, of);
	if (!axes) return;
	const [set] = axes;
	if (axes.length !== 1 || typeof type !== 'object' || type.member_of !== subject)
		findings.add(
			[...path, 'of'],
			'not-a-choice',
			`${of} does not choose one of ${subject} for each member of one other set`,
			'Name a choice.'
		);
	columns.forEach((name, i) => {
		const sets = setsOf(findings.workbook, name);
		if (sets && !(sets.length === 1 && sets[0] === set))
			findings.add(
				[...path, 'columns', i],
				'picture-axes',
				`${name} is not per ${set} alone`,
				`Name a quantity per ${set}.`
			);
	});
}

function checkMonths(
	findings: Findings,
	{ period, results, added = [], closed, planned_on_close: anew }: PictureOf<'months'>,
	path: Path
): void {
	const { workbook } = findings;
	const set = findSet(workbook, period);
	if (set && set.time === undefined)
		findings.add(
			[...path, 'period'],
			'no-months',
			`${period} is not marked as months`,
			'Name a set that is.'
		);
	results.forEach((name, i) => {
		const axes = setsOf(workbook, name);
		if (axes && !(axes.length === 1 && axes[0] === period))
			findings.add(
				[...path, 'results', i],
				'picture-axes',
				`${name} is not per ${period} alone`,
				`Name a quantity per ${period}.`
			);
	});
	added.forEach((name, i) => {
		if (!results.includes(name))
			findings.add(
				[...path, 'added', i],
				'not-drawn',
				`${name} is none of the results`,
				'Name one of them.'
			);
	});
	const of = closed === undefined ? undefined : findQuantity(workbook, closed);
	if (of && (of.type !== 'yes_no' || String(of.per) !== period))
		findings.add(
			[...path, 'closed'],
			'picture-axes',
			`${of.name} does not say yes or no for each ${period}`,
			`Name a yes/no quantity per ${period}.`
		);
	const plans = anew === undefined ? undefined : findQuantity(workbook, anew);
	if (plans && (plans.type !== 'yes_no' || axesOf(plans).length > 0))
		findings.add(
			[...path, 'planned_on_close'],
			'picture-axes',
			`${plans.name} does not say yes or no once for all months`,
			'Name a yes/no quantity without sets.'
		);
}

function checkRanking(
	findings: Findings,
	{ amount, by_part: byPart, columns = [] }: PictureOf<'ranking'>,
	path: Path
): void {
	const axes = setsOf(findings.workbook, amount);
	if (!axes) return;
	const [set = ''] = axes;
	const wrong = (field: Path, name: string, per: string) =>
		findings.add(
			[...path, ...field],
			'picture-axes',
			`${name} is not per ${per}`,
			`Name a quantity per ${per}.`
		);
	if (axes.length !== 1) {
		wrong(['amount'], amount, 'one set');
		return;
	}
	const parts = byPart === undefined ? undefined : setsOf(findings.workbook, byPart);
	if (byPart !== undefined && parts && !(parts.length === 2 && parts.includes(set)))
		wrong(['by_part'], byPart, `${set} and one other set`);
	columns.forEach((name, i) => {
		const sets = setsOf(findings.workbook, name);
		if (sets && !(sets.length === 1 && sets[0] === set))
			wrong(['columns', i], name, `${set} alone`);
	});
}

function checkWaterfall(findings: Findings, picture: PictureOf<'waterfall'>, path: Path): void {
	const { month, to_date: toDate } = picture;
	const asked = (field: Path, name: string, others: number | null) => {
		const sets = setsOf(findings.workbook, name);
		const isFit = sets?.includes(month) && (others === null || sets.length === others + 1);
		if (sets && !isFit)
			findings.add(
				[...path, ...field],
				'picture-axes',
				`${name} is not per ${month}${others === 1 ? ' and one other set' : ''}`,
				`Name a quantity per ${month}${others === 1 ? ' and one other set' : ''}.`
			);
	};
	const ends = { closed: picture.closed, from: picture.from, to: picture.to };
	for (const [field, name] of Object.entries(ends)) asked([field], name, 0);
	asked(['steps'], picture.steps, 1);
	picture.entered.forEach((name, i) => asked(['entered', i], name, null));
	if (!toDate) return;
	asked(['to_date', 'from'], toDate.from, 0);
	asked(['to_date', 'to'], toDate.to, 0);
	asked(['to_date', 'steps'], toDate.steps, 1);
}

function checkAudit(findings: Findings, picture: PictureOf<'audit'>, path: Path): void {
	const { workbook } = findings;
	const perCase = [
		'decided',
		'last',
		'from',
		'to',
		'to_date',
		'rest',
		'payback_promised',
		'payback'
	];
	for (const field of perCase) {
		const name = picture[field as 'from'];
		const sets = setsOf(workbook, name);
		if (sets && !(sets.length === 1 && sets[0] === picture.case))
			findings.add(
				[...path, field],
				'picture-axes',
				`${name} is not per ${picture.case} alone`,
				`Name a quantity per ${picture.case}.`
			);
	}
	const steps = setsOf(workbook, picture.steps);
	if (steps && !(steps.length === 2 && steps.includes(picture.case)))
		findings.add(
			[...path, 'steps'],
			'picture-axes',
			`${picture.steps} is not per ${picture.case} and one other set`,
			`Name a quantity per ${picture.case} and one other set.`
		);
	picture.takes.forEach(({ promise }, i) => {
		const formula = findQuantity(workbook, promise)?.formula;
		if (setsOf(workbook, promise) && !(typeof formula === 'object' && formula.by === picture.case))
			findings.add(
				[...path, 'takes', i, 'promise'],
				'picture-cases',
				`${promise} has no rule for each ${picture.case}`,
				`Give it a formula by ${picture.case}: each case that is decided gets a rule of its own there.`
			);
	});
}

function checkLoads(findings: Findings, { loads, month }: PictureOf<'capacity'>, path: Path): void {
	loads.forEach(({ load }, i) => {
		const sets = setsOf(findings.workbook, load);
		if (sets && !(sets.length === 2 && sets.includes(month)))
			findings.add(
				[...path, 'loads', i, 'load'],
				'picture-axes',
				`${load} is not per ${month} and one other set`,
				`Name a load per resource and ${month}.`
			);
	});
}

/** What a part of a paper needs, by its kind. */
const PART_NEEDS: Readonly<Partial<Record<PaperPart, 'quantities' | 'text'>>> = {
	figures: 'quantities',
	table: 'quantities',
	assumptions: 'quantities',
	studies: 'quantities',
	text: 'text'
};

function checkPaper(findings: Findings, picture: PictureOf<'paper'>, path: Path): void {
	const { pictures = [] } = findings.workbook;
	if (pictures.find((other) => other.kind === 'paper' && other.name === picture.name) !== picture)
		findings.add(
			[...path, 'name'],
			'duplicate-paper',
			`there are two papers with the name ${picture.name}`,
			'Rename one of the two.'
		);
	picture.sections.forEach((section, i) => {
		const at = [...path, 'sections', i];
		const { kind, set, quantities = [] } = section;
		const need = PART_NEEDS[kind];
		if (need !== undefined && section[need] === undefined)
			findings.add(
				[...at, need],
				'paper-part',
				`a part of the kind "${kind}" names no ${need}`,
				need === 'text' ? 'Write what it says, or take it out.' : 'Name some, or take it out.'
			);
		const picturesNeeded = { case: 'payback', patterns: 'patterns' } as const;
		const drawn = kind === 'case' || kind === 'patterns' ? picturesNeeded[kind] : null;
		if (drawn && !pictures.some((other) => other.kind === drawn))
			findings.add(
				[...at, 'kind'],
				'paper-part',
				`a part of the kind "${kind}" is drawn by a picture of the kind "${drawn}", and there is none`,
				'Add that picture, or take the part out.'
			);
		if (kind === 'table' && set === undefined)
			findings.add(
				[...at, 'set'],
				'paper-part',
				'a table names no set',
				'Name the set of its rows.'
			);
		else if (kind === 'table')
			quantities.forEach((name, n) => {
				const sets = setsOf(findings.workbook, name);
				if (sets && !(sets.includes(set!) && sets.length <= 2))
					findings.add(
						[...at, 'quantities', n],
						'picture-axes',
						`${name} is not per ${set}, or per ${set} and one other set`,
						`Name a quantity per ${set}.`
					);
			});
	});
}

function checkPatterns(findings: Findings, picture: PictureOf<'patterns'>, path: Path): void {
	const { pattern, against, metres, cost, rows } = picture;
	const set = findSet(findings.workbook, pattern);
	if (set && against !== undefined) checkMember(findings, [...path, 'against'], set, against);
	const named: readonly (readonly [Path, string])[] = [
		[['metres'], metres],
		[['cost'], cost],
		...rows.map((row, i) => [['rows', i], row] as const)
	];
	for (const [field, name] of named) {
		const sets = setsOf(findings.workbook, name);
		if (sets && !(sets.length === 1 && sets[0] === pattern))
			findings.add(
				[...path, ...field],
				'picture-axes',
				`${name} is not per ${pattern} alone`,
				`Name a quantity per ${pattern}.`
			);
	}
}

function setsOf(workbook: Workbook, name: string): string[] | undefined {
	const quantity = findQuantity(workbook, name);
	return quantity && axesOf(quantity).map(({ set }) => set);
}
