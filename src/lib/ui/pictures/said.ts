/** The workbook's cautions that are to be said of what a picture draws, with the scenario that each is said of. */
import { pictureQuantities } from '$lib/workbook/picture-names';
import type { Picture } from '$lib/workbook/schema';
import type { FigureCaution } from '../figure/caution';
import type { Open } from '../figure/open';
import { saidBeside } from '../said-beside';
import { texts } from '../said-beside-texts';
import { scenariosIn } from './stale';

export function saidOf(picture: Picture, open: Open): FigureCaution[] {
	const names = new Set(pictureQuantities(picture).map(([, name]) => name));
	const titles = new Map(open.layout.workbook.scenarios.map(({ id, title }) => [id, title]));
	return scenariosIn(picture, open).flatMap((id) =>
		saidBeside(open.layout, open.results.get(id), names).map((said) => ({
			text: texts.inScenario(titles.get(id) ?? id, said.text, said.message),
			said
		}))
	);
}
