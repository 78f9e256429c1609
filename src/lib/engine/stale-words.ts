/** Why figures are out of date, in words: by themselves, because the first screen fetches them. */

/** It is being made anew, there is none, or one is kept that does not fit any more. */
export type StaleBecause = 'planning' | 'refused' | 'kept';

export const STALE_WORDS: Readonly<Record<StaleBecause, string>> = {
	planning: 'the plan it rests on is being made anew',
	refused: 'no plan answers the workbook as it is now',
	kept: 'the plan that is kept no longer fits'
};

/** At the head of a table of a file. */
export const staleHead = (because: StaleBecause): string =>
	`Figures in italics are out of date: ${STALE_WORDS[because]}.`;
