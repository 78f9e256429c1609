/**
 * What each field of a workbook file is, for the JSON Schema alone: the page that opens files does without. Keys are the
 * way to a field, "sheets.quantities.unit"; where the kind decides, it stands in brackets, "studies(risk).draws".
 * A way that is not here is looked for without its kinds, and then by its end.
 */
import { PICTURE_WORDS } from './picture-schema-words';
import { QUOTE_WORDS } from './quote-schema-words';
import { STUDY_WORDS } from './study-schema-words';

const WORDS: Readonly<Record<string, string>> = {
	$schema: 'The address of this schema, for text editors; the program does not read it.',
	format: 'Says that the file is a workbook.',
	version: 'The version of the file format. Older files are brought up when they are opened.',
	title: 'What the workbook is called.',
	about: 'What it is about, for whoever opens it.',
	invented: 'Its figures are made up, and every screen says so.',
	begun_from:
		'The shipped workbook that it was begun from, by the name of its file: the review list tells which entries still stand as in that one.',

	units: 'Units of its own, beside those that every workbook knows.',
	'units.symbol': 'How it is written: "coil_rack".',
	'units.label': 'What it is called in lists.',
	'units.equals':
		'For a multiple of another unit: "1000 EUR". Left out, it is a base of its own: a thing counted, or a currency.',

	sets: 'The sets that quantities are per: products, lines, months.',
	'sets.name': 'Its name in formulas.',
	'sets.label': 'What it is called on screen.',
	'sets.plural': 'What its members together are called: "products".',
	'sets.members': 'Its members, in order.',
	'sets.members.id': 'Its name in formulas and in values.',
	'sets.members.label': 'What it is called on screen; its id when left out.',
	'sets.members.number':
		'What NUMBER(set) gives for it, in the unit of the set: the calendar year of a year, the place in time of a period.',
	'sets.cyclic':
		'The neighbour of the last is the first: hours of the week, months of a standing year.',
	'sets.number_unit': "The unit of the members' numbers.",
	'sets.spans': 'What all members together last: "1 year" for twelve months. SPAN(set) gives it.',
	'sets.time':
		'Its members are months, one after the other, by year and month as ISO 8601 writes them: "2027-04".',
	'sets.present':
		'A yes/no quantity per this set alone: members for which it says no are absent in that scenario.',
	'sets.not_copied':
		'Number inputs per this set that a copy of a member begins without, at 0, unless whoever copies takes them along: its demand.',
	'sets.comes_with':
		'Numbers and choices of no set, or per this set alone, that one more member calls for, asked where it is put into one scenario alone, or where one is otherwise there: its outlay, its start, its life, its speed.',

	'sets.own':
		"Its members are the plant's own: a workbook that is begun from this one has none of them but what it needs to begin with.",
	'own.like':
		'The member of the shipped workbook that stands for all until the own ones are named.',
	'own.first': 'What that one is called in a workbook that is begun from this one.',
	'own.near':
		'Numbers per this set by which the shipped member that is nearest to a new one is found; its values are the typical ones.',
	'sets.members.like':
		'The member of the shipped workbook whose values it began with: they are typical ones until replaced.',

	relations: 'Which pairs of members exist: the products that run on a line.',
	'relations.name': 'Its name, which quantities give in "in".',
	'relations.label': 'What it is called on screen.',
	'relations.sets': 'The sets of which its pairs are made, in order.',
	'relations.pairs': 'The pairs that exist: a member of each set, in their order.',

	sheets: 'The sheets, each a list of quantities.',
	'sheets.title': 'What the sheet is called.',
	'sheets.headline': "The quantity whose value stands beside the sheet's title in the contents.",
	'sheets.quantities': 'Its quantities, in order: entered values and formulas.',
	'quantities.name': 'Its name in formulas: a letter, then letters, digits or underscores.',
	'quantities.label': 'What it is called on screen.',
	'quantities.other_names':
		'What else people call it, for whoever looks for it: trade words that are in neither label nor name. No commas.',
	'quantities.type':
		'What its values are: numbers (when left out), yes or no, or members of a set. The last two have no unit.',
	'type.member_of': 'The set of which a member is chosen.',
	'quantities.unit': 'Its unit: "EUR/kg". Left out, it is a plain number.',
	'quantities.per':
		'The sets that it has a value for each member of, or named axes "from: product" where a set is used twice.',
	'quantities.in': 'The relations that say which of the pairs exist.',
	'quantities.shown':
		'How its number is read: a date, kept as days since 1899-12-30; a year, without a mark for thousands.',
	'quantities.fixed': 'An input fixed with the structure: no scenario changes it.',
	'quantities.value':
		'The entered values, in its own unit: one, or an object by member, nested in the order of "per". A date is a text: "2024-02-29". Null: nobody entered one.',
	'quantities.formula':
		'One formula for all members, or one by member of one of its axes; "input" as a case takes the entered value.',
	'formula.by': 'The axis by whose members the formulas differ.',
	'formula.cases': 'The formula by member; "*" is for all others.',
	'quantities.path':
		'Says that its formula is a path in time: it repeats the month before, but where a step is entered. On screen steps are typed in its own cells.',
	'path.set_by': 'The input, per the same sets, that sets a level from a month on.',
	'path.moved_by':
		'The input, per the same sets and in %, that changes it by a share from a month on.',
	'quantities.where': 'A yes/no formula: where it says no, there is no value.',
	'quantities.range': 'The values that are permitted; others are refused or shown as faults.',
	'quantities.usual':
		'Where its numbers usually lie, in its unit: one outside is taken, with a caution beside it.',
	'range.min': 'The least value permitted.',
	'range.max': 'The greatest value permitted.',
	'range.above': 'Values must be greater than this.',
	'range.below': 'Values must be less than this.',
	'quantities.whole': 'Chosen in whole steps of its unit where a programme decides it.',
	'quantities.check':
		'It must be yes; or, if it is a number, zero within the tolerance. Else the workbook shows a fault.',
	'check.message': 'What is said where it fails.',
	'check.tolerance': 'How far from zero a number may be, in its own unit.',
	'quantities.caution': 'A caution beside the value wherever this yes/no quantity says yes.',
	'caution.message': 'What is said where it says yes.',
	'caution.beside':
		'Quantities that mislead whoever reads them without it: it is said beside each of them, in the strip and in pictures.',
	'caution.mended_by':
		'Inputs by which it is mended: it leads to their cells in the scenario that it is said of.',
	'usual.min': 'The least that is usual.',
	'usual.max': 'The most that is usual.',
	'quantities.source': 'Where the value comes from.',
	'quantities.date': 'The day on which the value was found: "2026-11-24".',
	'quantities.spread': 'How sure an input is, in its unit; studies of risk read it.',
	'spread.min': 'The least that it may come to.',
	'spread.likely': 'What it comes to most likely.',
	'spread.max': 'The most that it may come to.',
	'quantities.digits': 'Significant digits on screen; 4 when left out.',
	'quantities.open': 'Those who may see only what is open see its values, and nothing else of it.',

	scenarios: 'The base, which has no parent, and what else may be.',
	'scenarios.id': 'Its name in files and on the command line.',
	'scenarios.title': 'What it is called on screen.',
	'scenarios.parent': 'The scenario that it changes; null for the base alone.',
	'scenarios.against':
		'The scenario, or the frozen copy, that x[reference] reads: the base when left out.',
	'scenarios.changes': 'What it enters in place of its parent, at most once for each quantity.',
	'changes.quantity': 'The input that is changed.',
	'changes.value':
		"As 'value' of a quantity, but sparse: what is left out follows the parent; null clears the value.",
	'changes.note': 'Why it is changed.',

	front: 'What the first screen says in its strip.',
	'front.subject':
		'The set one of whose members is the subject: a quantity per this set is shown for that member.',
	'front.first_subject': 'The member that is the subject until the reader chooses another.',
	facts: 'The figures of the strip, in order.',
	'facts.quantity': 'The quantity whose value is shown.',
	'facts.title':
		'Above the figure; {name} is replaced by the value of that quantity with its unit.',
	'facts.below': 'A line below the figure.',
	'facts.beside': 'Words beside the figure instead of its unit: "years to pay back".',
	'facts.of': 'The base (when left out), or the scenario in hand.',
	'facts.without': "Shown instead of 'below' where the quantity has no answer.",

	starts: 'Starting views, one for each reader: what they look for first, in their order.',
	'starts.id': 'Its name in files.',
	'starts.title': 'Who starts here: "Manager".',
	'starts.note': 'What they find here.',
	'starts.facts': 'The figures of the strip for them, in place of those of the front.',
	'starts.findings': 'What the view shows, in order.',
	'findings.title': 'Above the figures; {name} is replaced by the value of that quantity.',
	'findings.quantities':
		'What is shown: several of one set beside each other, single ones below each other.',
	'findings.of':
		'The base (when left out) with what the scenario in hand changes, or that scenario alone.',
	'findings.picture': "The kind of picture: the first of the workbook's of that kind is shown.",

	programmes: 'What the workbook decides by itself.',
	'programmes.name': 'Its name in files and on the command line.',
	'programmes.title': 'What it is called on screen.',
	'programmes.each': 'The sets for each of whose members it is solved apart.',
	'programmes.maximise':
		'The quantity that shall be largest, per the sets of "each". This or "minimise".',
	'programmes.minimise':
		'The quantity that shall be smallest, per the sets of "each". This or "maximise".',
	'programmes.decisions':
		'The inputs that are chosen where nobody entered a value; their ranges are bounds.',
	'programmes.constraints':
		'The yes/no quantities that must hold: comparisons of two sides, or several joined by AND.',
	'programmes.shadow_prices':
		'By the quantity that is filled with it: the constraint of whose next unit it is the worth.',
	'programmes.off': 'Kept, and not solved.',

	plans: 'What the programmes decided for each scenario.',
	'plans.programme': 'Whose plan it is.',
	'plans.scenario': 'The scenario that it was made for.',
	'plans.digest': 'A mark of the derived programme that it is the best answer to.',
	'plans.objective': 'What the objective comes to, over all members of "each".',
	'plans.kept':
		'The day since which it is kept as it stands, whatever changes; left out, it follows.',
	'plans.values': 'What was decided, by quantity; a decision that is not written is 0.',
	'values.quantity': 'The decision.',
	'values.value': 'What was chosen, in its own unit, by member.',

	reviewed: 'Lines of the review list that somebody has ticked off.',
	'reviewed.id': 'The line: its kind, and the quantity, members and scenario that it is about.',
	'reviewed.of': 'A mark of what the line spoke of; the line comes back when that changes.',
	'reviewed.by': 'Who ticked it off.',
	'reviewed.reason': 'Why it is right as it stands.',

	steps:
		'What the first hour asks for, step by step, where somebody begins a plant of their own from this workbook.',
	'steps.title': 'What the step is called.',
	'steps.about': 'What to have at hand.',
	'steps.set': 'The set whose members are listed: the rows of a table.',
	'steps.quantities': 'The inputs that are asked for.',
	'steps.relation': 'The relation of two sets whose pairs are ticked.',
	'steps.compare': 'Figures that follow, to be looked at beside what was entered.',

	tables:
		'What the columns of imported tables mean, by name, so that the next file with the same headings is matched at once.',
	'tables.title': 'What the table is called.',
	'tables.quantity': 'The quantity of every row, where neither a row nor a column names one.',
	'tables.all': 'Sets, or axes, whose member is one for all rows, and is asked for with each file.',
	'tables.columns': 'Its columns, in their order.',
	'tables.columns.heading': 'As the file writes it.',
	'tables.columns.is':
		'What stands in it: values, which member a row is about, what a new member is called, a unit, the name of a quantity, several members together, or nothing that is taken.',
	'tables.columns.of': 'The set, or the axis of a quantity, that its members are of.',
	'tables.columns.scenario': 'The scenario that its values go into.',
	'tables.columns.quantity':
		'Whose values they are. Left out, a column names it in each row, or it is one for all rows.',
	'tables.columns.member': 'The member that the column stands for, where it stands for one.',
	'tables.columns.member.of': 'The set of the member.',
	'tables.columns.member.id': 'Its id.',
	'tables.columns.unit':
		'Of its numbers, as tables write it: "EUR/100 m". Left out, it is the quantity\'s own.',
	'tables.columns.decimal': 'The sign before decimals.',
	'tables.columns.day_first': 'Whether 05/06/2027 is a day of June.',
	'tables.log':
		'The table is a log, one row an event: how its rows are summed. Columns are named by their place in the list, from 0.',
	'tables.log.scenario': 'The scenario that the sums are entered in.',
	'tables.log.dates': 'Sets, or axes, whose member the date of a row chooses.',
	'tables.log.dates.of': 'The set or axis.',
	'tables.log.dates.by':
		'What of the date chooses the member: by the number of the member, or by its place where no member of the set has a number.',
	'tables.log.always': 'Members that hold for every row.',
	'tables.log.always.of': 'The set or axis.',
	'tables.log.always.id': 'The member.',
	'tables.log.only': 'Rows are taken only where a column holds one of these texts.',
	'tables.log.only.column': 'The column.',
	'tables.log.only.values': 'The texts, whatever their case.',
	'tables.log.covers':
		'The period that the log covers: from its first row to its last, or the whole months or years that they lie in.',
	'tables.log.without_rows':
		'What becomes of a cell that no row speaks of: it stays as it is (when left out), or is nought.',
	'tables.log.sums': 'What is taken of the rows, and entered where.',
	'tables.log.sums.quantity': 'The quantity that it is entered into, in its unit.',
	'tables.log.sums.take':
		'What is taken of the rows of a cell: their sum, number, average, least, most, standard deviation (of a sample), or their share of all.',
	'tables.log.sums.column': 'The column whose numbers are taken. Left out, rows are counted.',
	'tables.log.sums.unit': 'What one row is, where rows are counted: "lot".',
	'tables.log.sums.by_column': 'The sum is divided by that of this column.',
	'tables.log.sums.per': 'It is divided by how many of these the log covers.',
	'tables.log.sums.share_of': "The set or axis whose members' shares add up to 1.",
	'tables.pairs':
		'The table says which members of two sets go together. Columns are named by their place in the list, from 0.',
	'tables.pairs.relation': 'The relation that its pairs are of.',
	'tables.pairs.first':
		'The column that names the member of the first set. Left out, the headings of the other columns do.',
	'tables.pairs.second':
		'The column that names the member of the second set. Left out, the headings of the other columns do.',
	'tables.pairs.mark':
		'The column of marks, beside two that name members. Left out, every row is a pair.',

	calibrations:
		'Figures that are found from what was measured: which line or mean is laid through which points, and whose place its figures could take.',
	'calibrations.name': 'Its name in files.',
	'calibrations.title': 'What it is called on screen.',
	'calibrations.note': 'Where the points come from, and how they are got.',
	'calibrations.form':
		'A line (y = a + b x), a proportion (y = b x), a ratio (the sum of y over the sum of x), a mean, a standard deviation, or shares that add up to 1.',
	'calibrations.each': 'The set for each of whose members there is a fit of its own.',
	'calibrations.over': 'The set over which shares add up to 1.',
	'calibrations.x': 'What stands along x, of a line, a proportion and a ratio.',
	'calibrations.y': 'What was measured.',
	'x.label': 'What it is called.',
	'x.unit': 'Its unit. Left out, it is a plain number.',
	'y.label': 'What it is called.',
	'y.unit': 'Its unit. Left out, it is a plain number.',
	'calibrations.today': 'The quantity that says what x is today: the points should reach it.',
	'calibrations.gives': 'The figures of the fit, and whose place each could take.',
	'gives.parameter':
		'Which figure: the intercept or slope of a line, a ratio, a mean, a standard deviation, a share.',
	'gives.quantity': 'The quantity whose value it could take. Left out, it is only shown.',
	'gives.at': "Members of the quantity's other axes.",
	'at.of': 'The axis, or its set.',
	'at.id': 'The member.',
	'gives.per': 'It is divided by this: "730 h" makes the energy of a month a power.',
	'calibrations.data': 'The points, as they came in.',
	'data.source': 'Where these points come from.',
	'data.points': 'The points, in the units of x and y.',
	'points.at': 'The member whose fit it is of.',
	'points.of': 'The member whose share it is.',
	'points.group': 'What belongs together, such as the year of a month.',
	'points.x': 'Its x.',
	'points.y': 'Its y.',

	frozen: 'Frozen copies: values as they stood on a day, which no edit changes.',
	'frozen.id': 'What formulas call it: x[standard_2028] reads x as the copy holds it.',
	'frozen.title': 'What it is called on screen.',
	'frozen.note': 'What it was made for.',
	'frozen.of': 'The title of the scenario that it was made of.',
	'frozen.date': 'The day on which it was made: "2027-11-30".',
	'frozen.by': 'Who made it.',
	'frozen.decided':
		'Of the base as it was: the title of the scenario that was made the base on that day.',
	'frozen.revision': 'The revision on the server that it was made from.',
	'frozen.sets': 'Members as they were called, so that those that are gone can be told.',
	'frozen.sets.name': 'The name of the set.',
	'frozen.sets.members': 'Its members on that day.',
	'frozen.sets.members.id': 'The member.',
	'frozen.sets.members.label': 'What it was called. Left out: the same.',
	'frozen.quantities': 'The quantities that it holds.',
	'frozen.quantities.name': 'The name of the quantity.',
	'frozen.quantities.label':
		'What it was called. Left out: label and formula are those of the quantity of this name in the file.',
	'frozen.quantities.unit': 'The unit of the values. Left out, they are plain numbers.',
	'frozen.quantities.member_of': 'The set whose members it chose, of a choice.',
	'frozen.quantities.per': 'Its sets on that day, in the order of the values.',
	'frozen.quantities.formula': 'Its formula on that day, to be read.',
	'frozen.quantities.value': 'The values, by member. What had none is left out.',
	'frozen.quantities.without':
		'Why the others had none: not entered, without an answer, off the end, or which error. What is in neither was not there.',
	'frozen.quantities.values':
		'The values of a quantity per something, as one list in the order of its sets, the last set fastest; [3, 0] is three times 0, null is none.',
	'frozen.quantities.reasons': 'As without, in the same kind of list.',

	kind: 'Which kind it is; that decides what else belongs here.',
	note: 'A note for the reader.',
	...PICTURE_WORDS,
	...QUOTE_WORDS,
	...STUDY_WORDS
};

/** What the field at the end of a way is; undefined where nothing is said of it. */
export function wordsFor(way: readonly string[]): string | undefined {
	const withKinds = way.join('.');
	if (Object.hasOwn(WORDS, withKinds)) return WORDS[withKinds];
	const plain = way.map((step) => step.replace(/\(.*\)$/, ''));
	for (let from = 0; from < plain.length; from++) {
		const key = plain.slice(from).join('.');
		// One step alone says enough only of what is the same everywhere.
		const isTold = from < plain.length - 1 || way.length === 1 || EVERYWHERE.has(key);
		if (isTold && Object.hasOwn(WORDS, key)) return WORDS[key];
	}
	return undefined;
}

const EVERYWHERE: ReadonlySet<string> = new Set(['kind', 'note', 'facts']);
