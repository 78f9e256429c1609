/** Any options together, in any market: both the plant with them and the plant without are planned for it anew. */
import { allocate } from './allocation';
import { poolsOf } from './cost';
import { investmentOf, type Investment } from './investment';
import { yearOf } from './metres';
import { DEMAND_PATH, settingWith, type OptionName } from './plant';
import { yearResult, type YearResult } from './result';
import { worksIn } from './works';

type Alternatives = Readonly<Record<string, OptionName | null>>;

/** What can be chosen, in the order of the plant's options, whose first sets the ramp-up. */
const CHOICES: Readonly<Record<string, Alternatives>> = {
	'Weekend crews': {
		no: null,
		'all year': 'A1 weekend crews all year',
		'July to November': 'A2 weekend crews Jul-Nov'
	},
	'New line': { no: null, yes: 'B new line L8' },
	'New rewinder': { no: null, yes: 'C new rewinder R4' },
	'Better gauging': { no: null, yes: 'D gauging on L1-L7' }
};

export interface Combination {
	/** By the name of the choice. */
	readonly chosen: Readonly<Record<string, string>>;
	readonly options: readonly OptionName[];
}

export const COMBINATIONS: readonly Combination[] = Object.entries(CHOICES).reduce<Combination[]>(
	(so, [name, alternatives]) =>
		so.flatMap(({ chosen, options }) =>
			Object.entries(alternatives).map(([label, option]) => ({
				chosen: { ...chosen, [name]: label },
				options: option === null ? options : [...options, option]
			}))
		),
	[{ chosen: {}, options: [] }]
);

const known = new Map<string, readonly YearResult[]>();

/** By plan year, today first. `demand`: all demand times this. */
function resultsWith(options: readonly OptionName[], demand: number): readonly YearResult[] {
	const key = JSON.stringify([options, demand]);
	const before = known.get(key);
	if (before) return before;
	const works = worksIn(settingWith(options));
	const pools = poolsOf(works);
	const results = DEMAND_PATH.map((_, year) => {
		const { made, holding } = allocate(works, year, { demand });
		return yearResult(works, pools, yearOf(works, made), holding);
	});
	known.set(key, results);
	return results;
}

/** Against the plant without any option, on the same demand; null where nothing is chosen. */
export function caseOf(options: readonly OptionName[], demand = 1): Investment | null {
	return investmentOf(
		settingWith(options).options,
		resultsWith(options, demand),
		resultsWith([], demand)
	);
}
