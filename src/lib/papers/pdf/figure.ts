/** A figure as lines and letters, one thing to whoever reads it out: its words in place of all that is drawn. */
import type { StructureElement } from 'pdfkit';
import { INKS } from '../inks';
import type { Figure, Mark } from '../paper';
import { LEADING, type Style } from './letters';
import type { Sheets } from './sheets';

const LETTERS = 8;

export function drawFigure(sheets: Sheets, parent: StructureElement, figure: Figure): void {
	const { doc, letters } = sheets;
	const { width, height } = figure.drawing;
	const scale = Math.min(sheets.width / width, (sheets.whole - 60) / height);
	const caption: Style = { weight: 'strong', size: 9.5, colour: INKS.ink };
	const lines = figure.caption ? letters.lines(figure.caption, caption, sheets.width) : [];
	const above = lines.length * caption.size * LEADING + 4;
	sheets.need(above + height * scale);
	if (lines.length > 0) {
		const words = doc.struct('P');
		parent.add(words);
		words.add(() =>
			lines.forEach((line, i) =>
				letters.draw(line, sheets.left, sheets.y + i * caption.size * LEADING, caption)
			)
		);
		words.end();
	}
	sheets.y += above;
	const { left, y: top } = sheets;
	const element = doc.struct('Figure', {
		alt: figure.alt,
		bbox: [left, top, left + width * scale, top + height * scale],
		placement: 'Block'
	});
	parent.add(element);
	element.add(() => {
		for (const mark of figure.drawing.marks) drawMark(sheets, mark, left, top, scale);
	});
	element.end();
	sheets.y = top + height * scale + 8;
}

function drawMark(sheets: Sheets, mark: Mark, left: number, top: number, scale: number): void {
	const { doc, letters } = sheets;
	const x = (value: number) => left + value * scale;
	const y = (value: number) => top + value * scale;
	const colour = INKS[mark.ink ?? 'ink'];
	switch (mark.kind) {
		case 'line': {
			const [first, ...rest] = mark.points;
			if (!first) return;
			doc
				.save()
				.lineWidth(mark.width ?? 1)
				.strokeColor(colour);
			if (mark.isDashed) doc.dash(3, { space: 2 });
			doc.moveTo(x(first[0]), y(first[1]));
			for (const point of rest) doc.lineTo(x(point[0]), y(point[1]));
			doc.stroke().restore();
			return;
		}
		case 'bar':
			doc
				.fillColor(colour)
				.rect(x(mark.x), y(mark.y), mark.width * scale, mark.height * scale)
				.fill();
			return;
		case 'dot':
			doc.fillColor(colour).circle(x(mark.x), y(mark.y), 2.4).fill();
			return;
		case 'text': {
			const style: Style = { weight: 'regular', size: LETTERS, colour };
			const [line] = letters.lines(mark.text, style, Infinity);
			if (!line) return;
			const back = mark.at === 'end' ? line.width : mark.at === 'middle' ? line.width / 2 : 0;
			letters.drawOn(line, x(mark.x) - back, y(mark.y), style);
		}
	}
}
