/** Each kind of study in one table: how it is run, what it says on the command line, and whether it draws. */
import type { Plan } from '$lib/engine/plan';
import type { Workbook } from '$lib/workbook/schema';
import type { Study, StudyKind, StudyOf } from '$lib/workbook/study-schema';
import { breakEvenTold, runBreakEven, type BreakEvenResult } from './break-even';
import { bridgeTold, runBridge, type BridgeResult } from './bridge';
import type { OptimiseResult } from './choices';
import type { CheckFirst } from './first-draw';
import type { Replanning } from './following';
import { mapTold, runMap, type MapResult } from './map';
import { optimiseTold, runOptimise } from './optimise';
import type { Answer } from './problem';
import type { RiskResult } from './risk-result';
import { riskTold, runWholeRisk } from './risk-whole';
import { runSensitivity, sensitivityTold, type SensitivityResult } from './sensitivity';
import type { Told } from './told';

export type StudyResult =
	BridgeResult | SensitivityResult | MapResult | BreakEvenResult | RiskResult | OptimiseResult;
export type ResultOf<K extends StudyKind> = Extract<StudyResult, { readonly kind: K }>;

export interface RunOptions {
	/** Of this workbook; built when left out. */
	readonly plan?: Plan | undefined;
	/** Instead of a risk study's own. */
	readonly draws?: number | undefined;
	readonly seed?: number | undefined;
	readonly onprogress?: ((done: number, of: number) => void) | undefined;
	/** Where the study asks for plans to follow; left out: they stay as they stand. */
	readonly replanning?: Replanning | undefined;
}

/** How often a study draws, and from which seed. */
export interface Draws {
	readonly draws?: number;
	readonly seed?: number;
}

export interface KindOfStudy<K extends StudyKind> extends Told<StudyOf<K>, ResultOf<K>> {
	/** The answer; `later` is told what the second engine has to check of it. */
	readonly run: (
		workbook: Workbook,
		study: StudyOf<K>,
		plan: Plan,
		later: CheckFirst,
		replanning: Replanning | undefined,
		options: RunOptions
	) => Answer<ResultOf<K>>;
	/** The study with these draws; left out where none are made. */
	readonly withDraws?: (study: StudyOf<K>, given: Draws) => StudyOf<K>;
}

const KINDS: { readonly [K in StudyKind]: KindOfStudy<K> } = {
	bridge: {
		...{ run: runBridge, ...bridgeTold },
		withDraws: (study, { draws, seed }) => ({
			...study,
			...(draws === undefined ? {} : { samples: draws }),
			...(seed === undefined ? {} : { seed })
		})
	},
	sensitivity: { run: runSensitivity, ...sensitivityTold },
	map: { run: runMap, ...mapTold },
	break_even: { run: runBreakEven, ...breakEvenTold },
	risk: {
		...{ run: runWholeRisk, ...riskTold },
		withDraws: (study, given) => ({ ...study, ...given })
	},
	optimise: { run: runOptimise, ...optimiseTold }
};

/** The entry of a study's own kind: what it is handed must be of the same kind. */
export const kindOf = (study: Study) => KINDS[study.kind] as unknown as KindOfStudy<StudyKind>;
