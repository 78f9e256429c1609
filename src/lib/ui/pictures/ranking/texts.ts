/** What the ranking says. */
import { inLanguage } from '../../language';

interface First {
	readonly label: string;
	readonly amount: string;
	readonly share: string;
}

const en = {
	// +page
	noPicture: 'No ranking of losses',
	noneInWorkbook:
		'This workbook ranks nothing. A picture of the kind "ranking" in its file names a quantity per one set, as a cost per kind of loss.',

	first: ({ label, amount, share }: First, part: string) =>
		[`${label} comes first: ${amount}`, share && `${share} of all`, part]
			.filter(Boolean)
			.join(', '),
	fewest: (count: string, of: number, share: string) => `The first ${count} of ${of} make ${share}`,
	total: (label: string, amount: string) => `${label}, all together: ${amount}`,
	nothing: (part: string) => `Nothing to rank${part ? ` in ${part}` : ''}`,
	inPart: (part: string) => `in ${part}`,
	partOf: 'Of',
	whole: 'the whole',
	share: 'Share',
	cumulative: 'With all above',
	percent: '%',
	base: 'Difference from the base',
	failed: (count: number) =>
		count === 1
			? 'One has no value, so shares cannot be told:'
			: `${count} have no value, so shares cannot be told:`,
	empty: (count: number) => (count === 1 ? 'One comes to nothing:' : `${count} come to nothing:`),
	row: (label: string, amount: string, share: string) =>
		`${label}: ${amount}${share ? `, ${share}` : ''}.`
};

export const texts = inLanguage({ en });
