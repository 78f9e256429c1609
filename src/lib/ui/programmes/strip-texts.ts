/** The words of the strip about plans: by themselves, because the first screen fetches them. */
import { inLanguage } from '../language';

const en = {
	provenAll: (count: number) => (count === 1 ? '1 plan proven best' : `${count} plans proven best`),
	staleAll: (count: number) =>
		count === 1 ? '1 plan is out of date' : `${count} plans are out of date`,
	keptAll: (count: number) =>
		count === 1 ? '1 plan kept as it stands' : `${count} plans kept as they stand`,
	beingPlanned: 'plans are being made',
	whyNotBetter: 'Why not better',
	key: 'Ctrl+Enter'
};

export const stripTexts = inLanguage({ en });
