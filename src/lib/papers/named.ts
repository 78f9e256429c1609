/**
 * The papers that can be made of a workbook: those that it names, else one for each picture that holds what a paper needs.
 */
import type { PaperPicture } from '$lib/workbook/paper-schema';
import type { Picture, Workbook } from '$lib/workbook/schema';
import { texts } from './texts';

export function papersOf({ pictures = [] }: Pick<Workbook, 'pictures'>): PaperPicture[] {
	const named = pictures.filter((picture): picture is PaperPicture => picture.kind === 'paper');
	return named.length > 0 ? named : pictures.flatMap(ofPicture);
}

/** Of a picture alone, with what it draws and nothing besides. */
function ofPicture(picture: Picture): PaperPicture[] {
	switch (picture.kind) {
		case 'payback':
			return [
				{
					...{ kind: 'paper', name: 'investment', title: texts.investment },
					sections: [
						{ kind: 'case', title: texts.comesTo },
						{ kind: 'changes', title: texts.changes },
						{
							...{ kind: 'table', title: texts.byYear, set: picture.year },
							quantities: [picture.cumulative, picture.cumulative_discounted]
						},
						{ kind: 'studies', title: texts.studies, quantities: [picture.npv, picture.payback] }
					]
				}
			];
		case 'patterns':
			return [
				{
					...{ kind: 'paper', name: 'shifts', title: texts.shifts },
					sections: [{ kind: 'patterns', title: picture.title }]
				}
			];
		case 'build_up':
			return [
				{
					...{ kind: 'paper', name: 'standard_cost', title: texts.standardCost },
					sections: [
						{
							...{ kind: 'table', title: picture.title, set: picture.subject },
							quantities: [
								picture.quantity,
								picture.total,
								...(picture.per_unit === undefined ? [] : [picture.per_unit])
							]
						}
					]
				}
			];
		default:
			return [];
	}
}

/** Whether it speaks of cases: of scenarios with an investment, each beside what it is compared with. */
export const isOfCases = ({ sections }: PaperPicture): boolean =>
	sections.some(({ kind }) => kind === 'case');
