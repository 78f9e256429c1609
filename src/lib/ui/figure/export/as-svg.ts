/** A figure of the page as an SVG file of its own. */
import { SvgContext } from '../svg/context';
import { screenTools } from '../svg/screen-tools';
import { SvgFile, type Description } from '../svg/svg-file';
import { frameOf, paint, paperOf } from './paint';
import { svgPainter } from './svg-painter';

/** Null where the browser has nothing to measure words with. */
export function figureAsSvg(figure: HTMLElement, told: Description): string | null {
	const tools = screenTools();
	if (!tools) return null;
	const { left, top, width, height } = frameOf(figure);
	const sheet = new SvgFile(Math.ceil(width), Math.ceil(height), tools);
	const brush = new SvgContext(sheet);
	brush.translate(-left, -top);
	paint(svgPainter(brush), figure);
	return sheet.file(brush.markup, paperOf(), told);
}
