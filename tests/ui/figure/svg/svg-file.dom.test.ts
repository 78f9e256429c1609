import { describe, expect, it } from 'vitest';
import { newSheet } from './sheets';

const SVG = 'http://www.w3.org/2000/svg';

describe('an SVG file', () => {
	it('states its size, and its paper covers all of it', () => {
		const svg = newSheet().svg();
		expect(svg.namespaceURI).toBe(SVG);
		expect(svg.getAttribute('width')).toBe('200');
		expect(svg.getAttribute('height')).toBe('100');
		expect(svg.getAttribute('viewBox')).toBe('0 0 200 100');
		const paper = svg.querySelector('rect');
		expect(paper?.getAttribute('width')).toBe('200');
		expect(paper?.getAttribute('height')).toBe('100');
		expect(paper?.getAttribute('fill')).toBe('#ffffff');
	});

	it('tells what it shows, and names those words as its own', () => {
		const svg = newSheet().svg({ title: 'Cost < price', description: '5 & "more".' });
		const title = svg.querySelector('title');
		const description = svg.querySelector('desc');
		expect(title?.textContent).toBe('Cost < price');
		expect(description?.textContent).toBe('5 & "more".');
		expect(svg.getAttribute('aria-labelledby')).toBe(title?.id);
		expect(svg.getAttribute('aria-describedby')).toBe(description?.id);
		expect(svg.firstElementChild).toBe(title);
	});
});

describe('words in an SVG', () => {
	it.each([
		['signs of markup', `a < b && "c" > 'd'`, `a < b && "c" > 'd'`],
		['letters of any script and pictures', 'Ø 15 mm, 5 €/m, 管 🧪', 'Ø 15 mm, 5 €/m, 管 🧪'],
		['what would end a section', ']]> <!-- --> <?x?>', ']]> <!-- --> <?x?>'],
		['characters that XML has no place for', 'a\u0000b\u001bc\ud800d\uffffe', 'abcde']
	])('are read back as they were written: %s', (_, text, read) => {
		const { brush, svg } = newSheet();
		brush.fillText(text, 0, 0);
		expect(svg().querySelector('text')?.textContent).toBe(read);
	});

	it('keep quotes and breaks in the name of a font', () => {
		const { brush, svg } = newSheet();
		brush.font = `12px "A & B", 'C<D'`;
		brush.fillText('x', 0, 0);
		const family = svg().querySelector('text')?.getAttribute('font-family');
		expect(family).toBe(`"A & B", 'C<D', sans-serif`);
	});
});
