/** What stands beside figures that are out of date: by itself, because the first screen fetches it. */
import { inLanguage } from '../language';
import { STALE_WORDS, type StaleBecause } from '$lib/engine/stale-words';

const en = {
	mark: 'out of date',
	/** In the tip of a cell, behind its figure. */
	tip: (full: string, because: StaleBecause) =>
		[full, `out of date: ${STALE_WORDS[because]}`].filter(Boolean).join('; '),
	outOfDate: 'Out of date',
	/** The link to the plan, in as few words as fit a column. */
	toPlan: {
		planning: 'being planned',
		refused: 'no plan fits',
		kept: 'kept plan no longer fits'
	} satisfies Record<StaleBecause, string>,
	picture: (because: StaleBecause) => `Figures here are out of date: ${STALE_WORDS[because]}.`
};

export const staleTexts = inLanguage({ en });
