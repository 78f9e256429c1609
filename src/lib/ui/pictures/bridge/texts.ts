/** What the picture of a bridge says. */
import { inLanguage } from '../../language';

const en = {
	// Bridge
	line: (label: string, unit: string, note: string) =>
		`${label}, ${unit}, from one scenario to another; solid is up, hatched is down${note ? `; ${note}` : ''}`,
	from: 'From',
	scenarioBridgeBegins: 'Scenario that the bridge begins with',
	to: 'to',
	scenarioBridgeEnds: 'Scenario that the bridge ends with',
	noBridge: 'No bridge',
	unchanged: (still: string) => `Unchanged: ${still}.`
};

export const texts = inLanguage({ en });
