/**
 * Figures as SVG: shapes of the page are taken over as they are, in the colours that they have there.
 */
import type { SvgContext } from '../svg/context';
import type { Attributes } from '../svg/xml';
import type { Painter } from './paint';
import { redrawChart } from '../redraw';

/** What says where a shape stands and what form it has. */
const GEOMETRY = ['d', 'x', 'y', 'width', 'height', 'cx', 'cy', 'r', 'x1', 'x2', 'y1', 'y2'];

export const svgPainter = (brush: SvgContext): Painter => ({
	brush,
	shape(shape, { a, b, c, d, e, f }, style) {
		const geometry = GEOMETRY.map((name) => [name, shape.getAttribute(name) ?? undefined]);
		const attributes = Object.fromEntries(geometry) as Attributes;
		const inks = { ...brush.ink('fill', style.fill), ...strokeOf(brush, style) };
		brush.place(shape.localName, { ...attributes, ...inks }, [a, b, c, d, e, f]);
	},
	chart(canvas, box) {
		const inset = brush.inset(box.left, box.top);
		redrawChart(canvas, inset);
		brush.take(inset);
	}
});

function strokeOf(brush: SvgContext, style: CSSStyleDeclaration): Attributes {
	if (style.stroke === 'none') return {};
	const dashes = style.strokeDasharray.match(/[\d.]+/g);
	return {
		...brush.ink('stroke', style.stroke),
		'stroke-width': parseFloat(style.strokeWidth),
		'stroke-dasharray': dashes?.join(' '),
		'vector-effect': style.vectorEffect === 'none' ? undefined : style.vectorEffect
	};
}
