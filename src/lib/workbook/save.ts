/**
 * A workbook as the text of its file: fields in the order of the schema, values and cases in the order of
 * their sets, tabs, a last line break. The same workbook gives the same text whatever edits led to it, so
 * that two files can be compared line by line.
 */
import { axesOf } from './axes';
import {
	calibrationSchema,
	fittedSchema,
	pointSchema,
	type Calibration
} from './calibration-schema';
import { caseOf, OTHERS } from './cells';
import { factSchema, findingSchema, startSchema, type Start } from './front-schema';
import { roleSetOf } from './picture-names';
import { filedFrozenSchema, filedQuantitySchema, frozenWritten } from './frozen-file';
import { frozenQuantitySchema, frozenSetSchema, type Frozen } from './frozen-schema';
import { withDatesWritten } from './file-dates';
import { keptLogSchema, logSumSchema, type KeptLog } from './log-schema';
import { findQuantity, findSet, memberPlaces } from './lookup';
import { printJson } from './print-json';
import {
	cautionSchema,
	changeSchema,
	frontSchema,
	memberSchema,
	pictureSchema,
	quantitySchema,
	rangeSchema,
	relationSchema,
	scenarioSchema,
	setSchema,
	sheetSchema,
	spreadSchema,
	unitDefinitionSchema,
	usualSchema,
	workbookSchema,
	type Quantity,
	type Values,
	type Workbook
} from './schema';
import { mapStudyNames } from './study-names';
import { programmePlanSchema, programmeSchema, type ProgrammePlan } from './programme-schema';
import {
	groundsSchema,
	keptQuoteSchema,
	letterheadSchema,
	quoteEntrySchema,
	quoteItemSchema,
	type Grounds,
	type KeptQuote
} from './quote-list-schema';
import { ownSchema, stepSchema } from './step-schema';
import { tickSchema } from './review-schema';
import { keptColumnSchema, keptPairsSchema, keptTableSchema, type KeptTable } from './table-schema';
import { orderedStudy } from './study-order';
import { branch, isTree, put } from './values';

export function saveWorkbook(given: Workbook): string {
	const workbook = withDatesWritten(given);
	const relations = workbook.relations?.map((relation) => inOrder(relationSchema, relation));
	const document = inOrder(workbookSchema, {
		...workbook,
		...(workbook.units && {
			units: workbook.units.map((unit) => inOrder(unitDefinitionSchema, unit))
		}),
		sets: workbook.sets.map((set) =>
			inOrder(setSchema, {
				...set,
				...(set.own && { own: inOrder(ownSchema, set.own) }),
				members: set.members.map((member) => inOrder(memberSchema, member))
			})
		),
		...(relations && { relations }),
		sheets: workbook.sheets.map((sheet) =>
			inOrder(sheetSchema, {
				...sheet,
				quantities: sheet.quantities.map((quantity) => orderedQuantity(workbook, quantity))
			})
		),
		scenarios: workbook.scenarios.map((scenario) =>
			inOrder(scenarioSchema, {
				...scenario,
				changes: scenario.changes.map((change) =>
					inOrder(changeSchema, {
						...change,
						value: orderedValues(workbook, findQuantity(workbook, change.quantity), change.value)
					})
				)
			})
		),
		...(workbook.front && {
			front: inOrder(frontSchema, {
				...workbook.front,
				facts: workbook.front.facts.map((fact) => inOrder(factSchema, fact))
			})
		}),
		...(workbook.starts && { starts: workbook.starts.map(orderedStart) }),
		...(workbook.pictures && { pictures: orderedPictures(workbook) }),
		...(workbook.studies && {
			studies: workbook.studies.map((study) => {
				const values = (name: string, value: Values) =>
					orderedValues(workbook, findQuantity(workbook, name), value);
				return mapStudyNames(orderedStudy(study), { values });
			})
		}),
		...(workbook.programmes && {
			programmes: workbook.programmes.map((programme) => inOrder(programmeSchema, programme))
		}),
		...(workbook.plans && { plans: workbook.plans.map((plan) => orderedPlan(workbook, plan)) }),
		...(workbook.reviewed && {
			reviewed: workbook.reviewed.map((tick) => inOrder(tickSchema, tick))
		}),
		...(workbook.tables && { tables: workbook.tables.map(orderedTable) }),
		...(workbook.steps && { steps: workbook.steps.map((step) => inOrder(stepSchema, step)) }),
		...(workbook.calibrations && {
			calibrations: workbook.calibrations.map(orderedCalibration)
		}),
		...(workbook.frozen && {
			frozen: workbook.frozen.map((copy) => orderedFrozen(workbook, copy))
		}),
		...(workbook.quotes && { quotes: workbook.quotes.map(orderedQuote) }),
		...(workbook.letterhead && { letterhead: inOrder(letterheadSchema, workbook.letterhead) })
	});
	return printJson(document);
}

function orderedTable(table: KeptTable): KeptTable {
	const columns = table.columns.map((column) => {
		const schema = keptColumnSchema.def.options.find(({ shape }) =>
			Object.values<string>(
				shape.is.def.type === 'enum' ? shape.is.def.entries : shape.is.def.values
			).includes(column.is)
		);
		return schema ? inOrder(schema, column) : column;
	});
	return inOrder(keptTableSchema, {
		...table,
		columns,
		...(table.log && { log: orderedLog(table.log) }),
		...(table.pairs && { pairs: inOrder(keptPairsSchema, table.pairs) })
	});
}

function orderedCalibration(one: Calibration): Calibration {
	return inOrder(calibrationSchema, {
		...one,
		gives: one.gives.map((given) => inOrder(fittedSchema, given)),
		...(one.data && {
			data: one.data.map(({ source, points }) => ({
				source,
				points: points.map((point) => inOrder(pointSchema, point))
			}))
		})
	});
}

/** What it holds stays in the order of its day. */
function orderedFrozen(workbook: Workbook, copy: Frozen): object {
	const { quantities, ...rest } = frozenWritten(workbook, copy);
	return inOrder(filedFrozenSchema, {
		...rest,
		...(copy.sets && { sets: orderedFrozenSets(copy.sets) }),
		quantities: quantities.map((one) => inOrder(filedQuantitySchema, one))
	});
}

const orderedFrozenSets = (sets: NonNullable<Frozen['sets']>): Frozen['sets'] =>
	sets.map((set) =>
		inOrder(frozenSetSchema, {
			...set,
			members: set.members.map(({ id, label }) => ({ id, ...(label !== undefined && { label }) }))
		})
	);

function orderedQuote(quote: KeptQuote): KeptQuote {
	return inOrder(keptQuoteSchema, {
		...quote,
		items: quote.items.map((item) =>
			inOrder(quoteItemSchema, {
				...item,
				entries: item.entries.map((entry) => inOrder(quoteEntrySchema, entry)),
				...(item.grounds && { grounds: orderedGrounds(item.grounds) })
			})
		)
	});
}

const orderedGrounds = (grounds: Grounds): Grounds =>
	inOrder(groundsSchema, {
		...grounds,
		...(grounds.sets && { sets: orderedFrozenSets(grounds.sets) }),
		figures: grounds.figures.map((one) => inOrder(frozenQuantitySchema, one))
	});

const orderedLog = (log: KeptLog): KeptLog =>
	inOrder(keptLogSchema, { ...log, sums: log.sums.map((sum) => inOrder(logSumSchema, sum)) });

function orderedPlan(workbook: Workbook, plan: ProgrammePlan): ProgrammePlan {
	const values = plan.values.map(({ quantity, value }) => ({
		quantity,
		value: orderedValues(workbook, findQuantity(workbook, quantity), value)
	}));
	return inOrder(programmePlanSchema, { ...plan, values });
}

/** The same object with its fields in the order in which the schema declares them; undefined ones left out. */
function inOrder<T extends object>(schema: { shape: object }, value: T): T {
	const entries = Object.keys(schema.shape).flatMap((field) => {
		const entry = Object.hasOwn(value, field) ? value[field as keyof T] : undefined;
		return entry === undefined ? [] : [[field, entry] as const];
	});
	return Object.fromEntries(entries) as T;
}

function orderedQuantity(workbook: Workbook, quantity: Quantity): Quantity {
	const { value, formula, range, usual, caution, spread } = quantity;
	return inOrder(quantitySchema, {
		...quantity,
		...(value !== undefined && { value: orderedValues(workbook, quantity, value) }),
		...(typeof formula === 'object' && {
			formula: { by: formula.by, cases: orderedCases(workbook, quantity, formula.cases) }
		}),
		...(caution && { caution: inOrder(cautionSchema, caution) }),
		...(range && { range: inOrder(rangeSchema, range) }),
		...(usual && { usual: inOrder(usualSchema, usual) }),
		...(spread && { spread: inOrder(spreadSchema, spread) })
	});
}

function orderedCases(
	workbook: Workbook,
	quantity: Quantity,
	cases: { readonly [member: string]: string }
): { [member: string]: string } {
	const by = typeof quantity.formula === 'object' ? quantity.formula.by : '';
	const axis = axesOf(quantity).find(({ name }) => name === by);
	const ids = [...keysInOrder(workbook, axis?.set, Object.keys(cases))];
	return Object.fromEntries(
		[...ids.filter((id) => id !== OTHERS), ...ids.filter((id) => id === OTHERS)].map((id) => [
			id,
			caseOf(quantity, id) ?? ''
		])
	);
}

function orderedValues(workbook: Workbook, quantity: Quantity | undefined, values: Values): Values {
	const axes = quantity ? axesOf(quantity) : [];
	const ordered = (here: Values, depth: number): Values => {
		if (!isTree(here)) return here;
		const next: { [member: string]: Values } = {};
		for (const id of keysInOrder(workbook, axes[depth]?.set, Object.keys(here)))
			put(next, id, ordered(branch(here, id) ?? null, depth + 1));
		return next;
	};
	return ordered(values, 0);
}

/** Member ids in the order of their set; what is no member of it last, as it came. */
function keysInOrder(workbook: Workbook, name: string | undefined, keys: string[]): string[] {
	const set = name === undefined ? undefined : findSet(workbook, name);
	if (!set) return keys;
	const places = memberPlaces(set);
	const placeOf = (key: string) => places.get(key) ?? places.size;
	return keys.sort((a, b) => placeOf(a) - placeOf(b));
}

function orderedStart(start: Start): Start {
	return inOrder(startSchema, {
		...start,
		...(start.facts && { facts: start.facts.map((fact) => inOrder(factSchema, fact)) }),
		findings: start.findings.map((finding) => {
			const schema = findingSchema.def.options.find(
				({ shape }) => shape.kind.def.values[0] === finding.kind
			);
			return schema ? inOrder(schema, finding) : finding;
		})
	});
}

function orderedPictures(workbook: Workbook): object[] {
	return (workbook.pictures ?? []).map((picture) => {
		const schema = pictureSchema.def.options.find(
			({ shape }) => shape.kind.def.values[0] === picture.kind
		);
		const ordered = schema ? inOrder(schema, picture) : picture;
		if (!('roles' in ordered)) return ordered;
		const { roles } = ordered;
		const ids = keysInOrder(workbook, roleSetOf(workbook, picture), Object.keys(roles));
		return { ...ordered, roles: Object.fromEntries(ids.map((id) => [id, roles[id]])) };
	});
}
