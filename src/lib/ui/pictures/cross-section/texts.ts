/** What the picture of a section says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noPicture: 'No picture of a product',
	noneInWorkbook:
		'This workbook names no cross-section and no cost build-up. A picture in its file says which quantities hold thickness, mass and cost by layer, or cost by part.',

	// CrossSection
	product: 'Product',
	noWall: 'No wall',

	// CrossSectionDrawing
	crossSectionOf: (title: string) => `Cross-section of ${title}`,

	// LayerTable
	layerOutsideIn: 'Layer, outside in',
	material: 'Material',
	shareMaterialCost: 'Share of the material cost',
	wall: 'Wall',
	inScenario: (title: string) => `In ${title}`
};

export const texts = inLanguage({ en });
