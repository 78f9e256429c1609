/** The words of the page of plans. Numbers come in as text. */
import { inLanguage } from '../language';
import { listed } from '../figure/words';

const en = {
	title: 'Plan',
	none: 'This workbook plans nothing by itself',
	noneHint:
		'A programme says which inputs are chosen, what must hold, and what shall be largest or smallest. The workbook then finds the best plan, and follows every edit with it.',
	add: 'Add a programme',
	newTitle: 'A new programme',
	guide: 'How a workbook decides by itself',
	scenario: 'Scenario',

	planning: 'Being planned. Until then the figures in grey are those of before the last edit.',
	off: 'Switched off: nothing is decided by it.',
	switchOn: 'Switch on',
	switchOff: 'Switch off',
	keep: 'Keep this plan as it stands',
	follow: 'Let the plan follow again',
	follows: 'The plan follows every edit.',
	stale: 'Figures in grey are those of the last plan.',

	noPlanFits: (scenario: string) => `${scenario}: no plan fits`,
	holdsBack: 'What keeps it from being better',
	nothingHoldsBack: 'Nothing is scarce, nothing is left out and nothing is held.',
	whyNot: 'Why not more',
	close: 'Close',
	asking: 'Being looked into …',

	runs: 'What runs where',
	runsHint:
		'Each bar is what its row lets the plan use, cut into what is used of it: 100 % is all that may be used, not all that there is. Type a figure to hold it whatever comes of it; clear it to let the plan decide again. Drag a piece of a bar to where it shall run instead, by touch after a moment; with the keyboard, M takes up what stands in a figure, arrow keys lead on, Enter puts it down.',
	/** Moving a piece. */
	standsHere: 'It runs here now.',
	cannotRun: (what: string, where: string, relation: string) =>
		relation
			? `${what} cannot run on ${where}: the two do not stand together in “${relation}”.`
			: `${what} cannot run on ${where}: there is no such combination.`,
	notThere: (what: string, where: string) => `${what} does not exist for ${where} here.`,
	pieceOf: (what: string, place: string) => `${what} of ${place}`,
	nothingToMove: 'Nothing runs here that could be moved.',
	taken: (piece: string) => `${piece} taken up. Enter puts it down, Escape leaves it where it was.`,
	putBack: 'Left where it was.',
	putDown: (amount: string, place: string) => `${amount} to ${place}`,
	moved: (piece: string, place: string) => `${piece} moved to ${place}; both figures are held.`,
	movedCosts: (cost: string) => `That costs ${cost}.`,
	movedBrings: (gain: string) =>
		`The plan brings ${gain} more, as the one before was held or kept.`,
	movedFree: 'That costs nothing.',
	movedNoPlan: (because: string) => `No plan fits with both held. ${because}`,
	movedKept: 'The plan is kept as it stood, so it does not follow.',
	movedWaits: 'What it costs is being looked into …',
	letBothGo: 'Let both go',

	resource: 'What is used',
	showAll: 'Rows in which nothing is planned, too',
	nothingPlanned: 'Nothing is planned here.',
	held: 'held',
	heldHere: 'What is held',
	release: 'Let go',
	holdHere: 'Hold at this figure',
	costs: 'costs',
	full: 'full',
	short: 'short',
	plan: 'Plan',
	yes: 'yes',
	no: 'no',

	rest: 'The rest of the plan',

	worth: 'What one more is worth',
	worthHint:
		'Nothing where there is room to spare. Choose a figure for how far it holds, and for what many more would bring.',
	worthNone: 'There is room to spare everywhere: one more is worth nothing.',
	curve: 'And many more',
	curveMore: 'More',
	curveBrings: 'would bring',
	curveEach: 'each, on average',
	noPlanThen: 'no plan',

	inScenario: (scenario: string) => `in ${scenario}`,
	whyTitle: (what: string) => `Why not more: ${what}`,
	proven: 'Proven best',
	provenWhole: (gap: string) => `Proven to be within ${gap} of the best there is in whole numbers`,
	provenBestWhole: 'Proven best in whole numbers',
	wholeHeld: 'What one more is worth is told with the whole choices as they are.',
	keptSince: (day: string) => `The plan is kept as it stood on ${day}; it does not follow edits.`,
	keptShort: (short: string) => `Keeping it costs ${short}.`,
	keptBest: 'It is still the best there is.',
	keptBroken:
		'It does not do what is required as the workbook is now, so that figures which rest on it are marked as out of date.',
	/** An objective, over all that is solved apart. */
	overAll: (label: string, amount: string) => `${label} over all: ${amount}.`,

	scarce: (what: string, place: string, worth: string, at: string, count: number, of: number) => {
		const where = place ? `${what}, ${place}` : what;
		if (of === 1) return `${where}: ${worth}`;
		const often = count === of ? 'in all' : `in ${count} of ${of}`;
		return `${where}: up to ${worth}${at ? ` (${at})` : ''}, something ${often}`;
	},
	leftOut: (what: string, amount: string, money: string | null) =>
		money === null
			? `${what}: ${amount} short of what would pay`
			: `${what}: ${amount} short of what would pay; ${money} are not earned for want of what is scarce`,
	idle: (what: string, share: string, at: string) => `${what}: ${share} used (${at})`,
	pinsCost: (count: number, cost: string | null) => {
		const held = count === 1 ? '1 figure is held' : `${count} figures are held`;
		return cost === null ? held : `${held}; that costs ${cost}`;
	},
	pinCost: (cost: string | null) =>
		cost === null ? 'no plan with it, or none without it' : `costs ${cost}`,
	pinFree: 'costs nothing',
	pinsMore: (count: number) => `And ${count} more that are held.`,
	inherited: (scenario: string) => `entered in ${scenario}`,

	table: (label: string, unit: string) => (unit ? `${label}, ${unit}` : label),
	rowsLeftOut: (rows: number) =>
		rows === 1
			? 'One row without a plan is left out.'
			: `${rows} rows without a plan are left out.`,
	loadOf: (what: string, at: string, share: string, free: string) =>
		`${what}${at ? `, ${at}` : ''}: ${share} used, ${free} free`,
	cellOf: (row: string, column: string, held: boolean) =>
		`${column ? `${row}, ${column}` : row}${held ? ', held' : ''}`,
	shortBy: (amount: string) => `${amount} short`,

	range: (more: string, until: string | null, less: string | null, untilLess: string | null) => {
		const up =
			until === null
				? `One more is worth ${more}.`
				: `One more is worth ${more}, for up to ${until} more.`;
		if (less === null) return `${up} With less there is no plan.`;
		const down = untilLess === null ? '' : `, for up to ${untilLess} less`;
		return `${up} One less takes away ${less}${down}.`;
	},
	noMore: 'With more there is no plan.',

	byItself: (lot: string) => `${lot} more, by itself`,
	takes: (amount: string, what: string, price: string) =>
		`takes ${amount} of ${what}, worth ${price}`,
	gives: (amount: string, what: string, price: string) =>
		`gives ${amount} to ${what}, worth ${price}`,
	moreBrings: (lot: string, money: string) => `${lot} more would bring ${money} in sum.`,
	moreCosts: (lot: string, money: string) =>
		`${lot} more would cost ${money} in sum: what it takes is worth more than it brings.`,
	moreEven: (lot: string) =>
		`${lot} more would bring just what it takes of scarce things: nothing is left over.`,
	moreNothing: (lot: string) => `${lot} more would change nothing.`,
	heldNoPlan: (now: string, because: string) =>
		`Held at ${now} by an entry, and no plan fits. ${because}`,
	heldAt: (now: string, change: string) => `Held at ${now} by an entry. ${change}`,
	atMost: (now: string, change: string) => `${now}, the most that its range allows. ${change}`,
	notChosen: (change: string) => `Not chosen. ${change}`,
	chosenAt: (now: string, change: string) => `${now} in the plan. ${change}`,
	waysTitle: (lot: string) => `How ${lot} more could be had`,
	moreOf: (what: string, price: string) => `more room in ${what} (worth ${price})`,
	changePrice: (lot: string, money: string) => `${money} more must be left of ${lot}`,
	change: (price: string, scarce: readonly string[]) => {
		const room = scarce.length === 0 ? '' : `there must be ${listed(scarce)}`;
		const parts = [price, room].filter(Boolean);
		return parts.length === 0 ? '' : `What would have to change: ${parts.join(', or ')}.`;
	},
	allUsed: (way: 'most' | 'least' | 'equal', there: string, price: string) =>
		way === 'least'
			? `Just the ${there} that must be: one less to keep to would be worth ${price}.`
			: `All ${there} are used: one more would be worth ${price}.`,
	someFree: (way: 'most' | 'least' | 'equal', free: string, there: string) =>
		way === 'least'
			? `${free} above the ${there} that must be, so it stands in nobody’s way.`
			: `${free} of ${there} are free, so one more would be worth nothing.`,
	taker: (what: string, value: string, held: boolean) =>
		`${what}, now ${value}${held ? ', held' : ''}`,
	perLot: (money: string, lot: string) => `${money} for ${lot} more`,

	holds: (holds: number, of: number) =>
		holds === of ? `holds, ${of} of ${of}` : `fails in ${of - holds} of ${of}`,

	inSum: 'In sum',
	wayItself: 'by itself',
	evens: 'comes out even',
	takersTitle: 'What could take more of it',
	changeLetGo: 'What would have to change: let the figure go, and the plan decides it.',

	must: 'What must hold',
	how: 'How it is stated',
	edit: 'Change the programme',
	remove: 'Remove it',
	name: 'Name',
	objective: 'What shall be best',
	objectiveWay: 'Largest or smallest',
	largest: 'As large as can be:',
	smallest: 'As small as can be:',
	shallLargest: 'Shall be largest',
	shallSmallest: 'Shall be smallest',
	chooseOne: 'Choose a quantity',
	apartFor: (sets: readonly string[]) =>
		`Solved apart for each member of ${listed(sets)}, as what shall be best has one value for each.`,
	apart: 'Solved apart for each',
	chosenTitle: 'What may be chosen',
	addDecision: 'Add an input that may be chosen',
	addRequirement: 'Add something that must hold',
	takeOut: 'Take out',
	worthInto: 'Worth of one more goes into',
	worthNowhere: 'nowhere',
	worthOfOne: (what: string) => `what one more of “${what}” is worth`,
	keepProgramme: 'Keep the programme',
	leave: 'Leave it as it was',
	missing: {
		title: 'Give it a name.',
		objective: 'Choose what shall be largest or smallest.',
		decisions: 'Choose at least one input that may be decided.'
	},
	showSums: 'Show it as sums',
	hideSums: 'Hide the sums',
	linear:
		'All are sums of what is chosen times figures that nothing chosen moves, and their units fit.',
	notSolvable: 'It cannot be solved as it stands:',
	partOfFormula: 'A part of a formula',
	moreTerms: (count: string) => `and ${count} more`,
	objectiveOf: (isLargest: boolean, label: string) =>
		isLargest ? `As large as can be: ${label}` : `As small as can be: ${label}`,
	size: (decisions: string, requirements: string, factors: string, whole: string, apart: string) =>
		`${decisions} decisions${whole ? `, ${whole} of them whole` : ''}, ${requirements} requirements, ${factors} factors${apart ? `, in ${apart} that are solved apart` : ''}.`,
	/** Who, and what it brings, or what the least comes to. */
	finding: (scenario: string, amount: string, isBest: boolean, isLeast: boolean) =>
		`${scenario}: the ${isBest ? 'best plan' : 'plan'} ${isLeast ? 'comes to' : 'brings'} ${amount}`
};

export const texts = inLanguage({ en });
