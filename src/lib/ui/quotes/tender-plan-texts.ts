/** What is said of a quote in the plan. */
import { inLanguage } from '../language';

const en = {
	title: 'In the plan, made again with the whole quote in it',
	busy: 'The plan is being made again with the quote in it …',
	line: 'Both sides are the best plan by the same rule, once without the quote and once with it; the plan that the workbook holds stays as it is. The quote is made on top of the demand that the plan has.',
	gains: (net: string, brings: string, loses: string) =>
		`With the whole quote the plant earns ${net} more than without: it brings ${brings}, less what it costs besides the plan, and making it and what gives way cost the plan ${loses}.`,
	costs: (net: string, brings: string, loses: string) =>
		`With the whole quote the plant earns ${net} less than without: it brings ${brings}, less what it costs besides the plan, and making it and what gives way cost the plan ${loses}.`,
	noRoom: (share: string) =>
		`No plan has room for all of it, whatever else gives way; ${share} of it would fit. Ask for fewer metres, other months, or more hours.`,
	full: (place: string, month: string, taken: string, free: string) =>
		`${place} in ${month}: the quote takes ${taken}, and ${free} are free.`,
	fullWithPlan:
		'Where that is more than is free, the plan below moves it to other lines and months, or lets other work go.',
	pushedOut: 'Sold less because of it',
	nothingOut: 'Nothing is sold less because of it.',
	made: 'Made elsewhere, or more',
	what: 'What',
	less: 'Less',
	more: 'Change',
	money: 'Money',
	hours: 'Hours by line and month',
	place: 'Line',
	month: 'Month',
	taken: 'The quote takes',
	free: 'Free without it',
	freeWith: 'Free with it',
	others: (count: number) => `and ${count} more`,
	noPlan: 'This workbook has no plan to ask, or an item has no figures yet.',
	keptNot: 'No plan was kept with it.'
};

export const tenderPlanTexts = inLanguage({ en });
