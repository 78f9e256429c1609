/** What the posts cost in a year, by role, and how the cost falls on the three stages. */
import { allYear, given, MONTHS, plant, sum, type Option, type Setting, type Share } from './plant';
import { hoursByMonth, scheduledHours, weekAverage } from './time';

export type Stage = 'line' | 'rewind' | 'crosslink';
export const STAGES: readonly Stage[] = ['line', 'rewind', 'crosslink'];

const { labour } = plant;
const wages: Share = labour.wage_eur_h;
const keys: Readonly<Record<string, Share>> = plant.allocation_keys.labour;
/** The posts are for this pattern, whatever lines add beyond it. */
const POSTED = '5x24';

const attended = labour.contract_h_year - labour.absence_h_year;

/** Average premium of a pattern's hours: the highest that applies, none stacked. */
export function averagePremium(pattern: string): number {
	return weekAverage(pattern, premiumOf);
}

function premiumOf(weekday: number, hour: number): number {
	const { night, saturday, sunday } = labour.premiums;
	return Math.max(
		hour >= 22 || hour < 6 ? night : 0,
		weekday === 5 ? saturday : 0,
		weekday === 6 ? sunday : 0
	);
}

/** Paid hours that one post of the three-shift week needs. */
export const postHours = scheduledHours(allYear(POSTED)) * (1 + labour.handover_h_per_shift / 8);
export const headsPerPost = postHours / attended;

/** EUR a year for one post at a wage of 1 EUR/h. */
const perPost =
	((postHours / attended) * labour.contract_h_year + postHours * averagePremium(POSTED)) *
	(1 + labour.oncost);

const WEEKEND = allYear('weekend-48');

/** The same for a weekend post of an option, in the months it holds, each hour at its premium. */
function perWeekendPost({ weekend_months = MONTHS }: Option): number {
	const paid = hoursByMonth(WEEKEND, (weekday, hour) => 1 + premiumOf(weekday, hour));
	const hours = sum(weekend_months.map((month) => paid[month - 1] ?? NaN));
	return (
		(hours *
			(1 + labour.handover_h_per_shift / 12) *
			labour.weekend_paid_factor *
			(1 + labour.oncost)) /
		(1 - labour.weekend_absence_h_year / labour.contract_h_year)
	);
}

export const postsPerShift = (setting: Setting): Share =>
	addUp([labour.posts_per_shift, ...setting.options.map((option) => option.posts_extra ?? {})]);

export interface People {
	readonly heads: number;
	readonly shiftLabour: number;
	readonly weekendLabour: number;
	readonly byStage: Readonly<Record<Stage, number>>;
}

export function peopleOf(setting: Setting): People {
	const posts = postsPerShift(setting);
	const cost = (of: Share, each: number): Share =>
		Object.fromEntries(
			Object.entries(of).map(([role, count]) => [role, count * each * given(wages, role)])
		);
	const shift = cost(posts, perPost);
	const weekend = addUp(
		setting.options.map((option) => cost(option.weekend_posts ?? {}, perWeekendPost(option)))
	);
	const byRole = Object.entries(addUp([shift, weekend]));
	const stage = (name: Stage) =>
		sum(byRole.map(([role, eur]) => eur * (given(keys, role)[name] ?? 0)));
	return {
		heads: headsPerPost * sum(Object.values(posts)),
		shiftLabour: sum(Object.values(shift)),
		weekendLabour: sum(Object.values(weekend)),
		byStage: { line: stage('line'), rewind: stage('rewind'), crosslink: stage('crosslink') }
	};
}

function addUp(shares: readonly Share[]): Share {
	const total: Record<string, number> = {};
	for (const share of shares)
		for (const [key, value] of Object.entries(share)) total[key] = (total[key] ?? 0) + value;
	return total;
}
