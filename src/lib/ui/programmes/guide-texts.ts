/**
 * The reference page on programmes: what one is, with an example that is worked through. Its figures are solved again in
 * tests/programmes/guide.test.ts.
 */
import { inLanguage } from '../language';

export interface GuideSection {
	readonly id: string;
	readonly title: string;
	readonly paragraphs: readonly string[];
	readonly table?: {
		readonly head: readonly string[];
		readonly rows: readonly (readonly string[])[];
	};
	/** Formulas, as they are typed. */
	readonly formulas?: readonly string[];
}

interface GuideTexts {
	readonly title: string;
	readonly lead: string;
	readonly back: string;
	readonly sections: readonly GuideSection[];
}

const en: GuideTexts = {
	title: 'Programmes: how a workbook decides by itself',
	lead: 'Most inputs of a workbook are what somebody knows: a price, a speed, the hours of a shift. Some are what somebody decides: how many metres of what to make on which line. A programme has the workbook decide those itself, as well as can be, and anew with every edit.',
	back: 'Back to the plan',
	sections: [
		{
			id: 'example',
			title: 'An example: two coils, forty hours',
			paragraphs: [
				'A line has 40 hours in a week. It makes two coils, one of 16 mm and one of 25 mm. Customers take no more than the table says, and a coil brings what the table says over what its resin and power cost.'
			],
			table: {
				head: ['', 'Hours a coil', 'Brings, EUR a coil', 'Asked for, coils'],
				rows: [
					['16 mm', '1', '60', '25'],
					['25 mm', '2', '90', '10']
				]
			}
		},
		{
			id: 'parts',
			title: 'The three parts of a programme',
			paragraphs: [
				'What may be chosen: inputs that nobody has to enter. Here it is the coils made of each size. They must be inputs, as what follows a formula is not anybody’s to decide. Their ranges are kept to.',
				'What must hold: yes-or-no quantities that compare two sides. Here the hours used may not be more than the hours there are, and no more may be made than is asked for. They are ordinary formulas of the workbook, and checks as well.',
				'What shall be largest, or smallest: one quantity that follows a formula. Here it is what all coils bring together.'
			],
			formulas: [
				'hours_used = SUM(made * hours_per_coil over coil)',
				'hours_hold = hours_used <= hours',
				'asked_for_holds = made <= asked_for',
				'earned = SUM(made * brings over coil)'
			]
		},
		{
			id: 'plan',
			title: 'The plan',
			paragraphs: [
				'An hour on the 16 mm coil brings 60 EUR, an hour on the 25 mm coil 45 EUR. So the best plan makes all 25 coils of 16 mm that are asked for, and with the 15 hours left 7.5 coils of 25 mm: 25 × 60 + 7.5 × 90 = 2,175 EUR.',
				'The workbook does not take the solver’s word for it. The plan is put to every requirement again, and prices are worked out that prove that no other plan can bring more. Only then does the page say “proven best”.',
				'If several plans are equally good, one of them is chosen by a fixed rule, so that no plan jumps from one edit to the next.'
			]
		},
		{
			id: 'worth',
			title: 'What one more is worth',
			paragraphs: [
				'One hour more would make half a coil of 25 mm more, and bring 45 EUR. That is what an hour is worth here; it is also called the shadow price of the hours. It holds for 5 hours more: then all 10 coils of 25 mm are made, and a further hour is worth nothing.',
				'It is not what an hour costs. If an hour of overtime costs 30 EUR, five of them are worth having, and the sixth is not.',
				'Where there is room to spare, one more is worth nothing. Where one more and one less are worth different amounts, the page tells both.'
			]
		},
		{
			id: 'why-not',
			title: 'Why not more',
			paragraphs: [
				'Customers would take 2.5 more coils of 25 mm, which would bring 225 EUR. Choose any figure of the plan to be told why it is not larger: what one more brings, what it takes of everything scarce, and what that is worth elsewhere. One more coil of 25 mm brings 90 EUR and takes 2 hours that are worth 45 EUR each: nothing is left over.'
			]
		},
		{
			id: 'hold',
			title: 'Holding a figure',
			paragraphs: [
				'A person may know better. Type 10 at the 25 mm coil, and the plan keeps to it: those coils take 20 hours, and 20 coils of 16 mm are made in the other 20. Together that brings 2,100 EUR, so the page says that holding the figure costs 75 EUR. Clear the field, and the plan decides again.',
				'A whole plan can be kept as it stands, too, for a promise that was given. The page then says since when, and what keeping it costs against the best.'
			]
		},
		{
			id: 'linear',
			title: 'What a programme cannot do',
			paragraphs: [
				'Everything must be a sum of what is chosen times figures that nothing chosen moves. Twice as many coils take twice the hours. A formula that multiplies two chosen figures with each other, divides by one, or asks in a condition how large one is, cannot be solved, and the page names the formula and the place.',
				'What is whole (a coil, a shift) can be chosen as whole numbers; their range then needs a least and a greatest value. Such plans take longer, and the page says how near to the best they are proven to be.',
				'If no plan fits, the page says which requirements conflict and by how much, in their own units. If there is no end to what could be gained, it names what grows and has no limit.'
			]
		},
		{
			id: 'scenarios',
			title: 'Scenarios, edits and undo',
			paragraphs: [
				'Each scenario has a plan of its own, started from the plan of the scenario that it is built on, so that the two differ only where it pays. Every edit is planned anew. Until the new plan is there, the figures of before stand in grey.',
				'A workbook can have several programmes. They are solved one after another, and each takes what those before it decided as it stands, whole numbers too; so does what one more is worth. One that is switched off decides nothing.',
				'Plans are kept in the file with the rest, so that it can be read where there is no solver. Undo takes back what somebody did; the plans then follow.'
			]
		}
	]
};

export const guide = inLanguage({ en });
