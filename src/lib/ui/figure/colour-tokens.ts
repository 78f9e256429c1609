/**
 * The page's colours for a canvas, which cannot read custom properties: each token as rgb, read anew
 * when the theme changes.
 */
import { colourOf } from './scenario-colours';
import { patternOf } from './svg/tiles';

const TOKENS = {
	ground: '--ground',
	leaf: '--leaf',
	rule: '--rule',
	mark: '--mark',
	ink: '--ink',
	muted: '--muted',
	copper: '--copper',
	petrol: '--petrol',
	resin: '--series-resin',
	adhesive: '--series-adhesive',
	barrier: '--series-barrier',
	scrap: '--series-scrap',
	energy: '--series-energy',
	packaging: '--series-packaging',
	crosslinking: '--series-crosslinking',
	people: '--series-people',
	plant: '--series-plant',
	scenario1: '--scenario-1',
	scenario2: '--scenario-2',
	scenario3: '--scenario-3',
	scenario4: '--scenario-4',
	scenario5: '--scenario-5'
} as const;

export type Colours = Readonly<Record<keyof typeof TOKENS, string>>;

export function coloursOf(element: Element): Colours {
	const style = getComputedStyle(element);
	const brush = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
	const found = Object.entries(TOKENS).map(([name, token]) => [
		name,
		asRgb(brush, style.getPropertyValue(token).trim())
	]);
	return Object.fromEntries(found) as Colours;
}

/** As the screen shows it: oklch and the like are painted once and read back. */
function asRgb(brush: CanvasRenderingContext2D | null, colour: string): string {
	if (!brush) return colour;
	brush.fillStyle = '#000';
	brush.fillStyle = colour;
	brush.fillRect(0, 0, 1, 1);
	const [red = 0, green = 0, blue = 0] = brush.getImageData(0, 0, 1, 1).data;
	return `rgb(${red}, ${green}, ${blue})`;
}

export const scenarioColour = (colours: Colours, place: number) =>
	[colours.scenario1, colours.scenario2, colours.scenario3, colours.scenario4, colours.scenario5][
		colourOf(place) - 1
	]!;

/** A colour let through to what lies below it. */
export const sheer = (rgb: string, share: number) =>
	rgb.replace('rgb(', 'rgba(').replace(')', `, ${share})`);

/** Diagonal lines on the ground, for what is lost. */
export function hatch(colour: string, ground: string): CanvasPattern | string {
	const draw = (brush: CanvasRenderingContext2D) => {
		brush.fillStyle = ground;
		brush.fillRect(0, 0, 6, 6);
		brush.strokeStyle = colour;
		brush.lineWidth = 1.3;
		brush.beginPath();
		for (const shift of [-6, 0, 6]) {
			brush.moveTo(shift, 6);
			brush.lineTo(shift + 6, 0);
		}
		brush.stroke();
	};
	return patternOf({ size: 6, draw }) ?? colour;
}
