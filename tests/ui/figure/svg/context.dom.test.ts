import { describe, expect, it } from 'vitest';
import { attributesOf, marksOf, newSheet } from './sheets';

/** Draws, and gives the marks as elements of the parsed file. */
function drawn(draw: (brush: ReturnType<typeof newSheet>['brush']) => void) {
	const { brush, svg } = newSheet();
	draw(brush);
	const root = svg();
	return { root, marks: marksOf(root), first: attributesOf(marksOf(root)[0]) };
}

describe('transforms', () => {
	it('nest: a turn within a shift, and back out by restore', () => {
		const { marks } = drawn((brush) => {
			brush.translate(100, 50);
			brush.save();
			brush.rotate(Math.PI / 2);
			brush.translate(10, 0);
			// (3, 0) is shifted to (13, 0), turned to (0, 13), shifted to (100, 63).
			brush.fillRect(3, 0, 2, 4);
			brush.restore();
			brush.fillRect(3, 0, 2, 4);
		});
		expect(marks[0]?.getAttribute('d')).toBe('M100 63L100 65L96 65L96 63Z');
		expect(marks[1]?.getAttribute('d')).toBe('M103 50L105 50L105 54L103 54Z');
	});

	it('hold for each point as it is set, not for the path as it is drawn', () => {
		const { first } = drawn((brush) => {
			brush.beginPath();
			brush.moveTo(0, 0);
			brush.translate(5, 5);
			brush.lineTo(10, 0);
			brush.stroke();
		});
		expect(first['d']).toBe('M0 0L15 5');
	});

	it('widen strokes and dashes as they stretch the plane', () => {
		const { first } = drawn((brush) => {
			brush.transform(3, 0, 0, 3, 0, 0);
			brush.lineWidth = 2;
			brush.setLineDash([4, 1]);
			brush.lineDashOffset = 2;
			brush.strokeRect(1, 1, 2, 2);
		});
		expect(first).toMatchObject({
			...{ d: 'M3 3L9 3L9 9L3 9Z', 'stroke-width': '6', fill: 'none' },
			...{ 'stroke-dasharray': '12 3', 'stroke-dashoffset': '6' }
		});
	});

	it('of an inset begin where it was made, and a reset leads back there', () => {
		const { marks } = drawn((brush) => {
			brush.translate(20, 10);
			const inset = brush.inset(1, 1);
			inset.setTransform(2, 0, 0, 2, 0, 0);
			inset.fillRect(1, 1, 1, 1);
			inset.resetTransform();
			inset.fillRect(0, 0, 1, 1);
			brush.take(inset);
		});
		expect(marks.map((mark) => mark.getAttribute('d'))).toEqual([
			'M23 13L25 13L25 15L23 15Z',
			'M21 11L22 11L22 12L21 12Z'
		]);
	});
});

describe('paths', () => {
	it('close a full turn where it began, through the four quarters', () => {
		const { first } = drawn((brush) => {
			brush.beginPath();
			brush.arc(10, 10, 5, 0, 2 * Math.PI);
			brush.fill();
		});
		const ends = [...(first['d'] ?? '').matchAll(/([\d.]+ [\d.]+)(?=C|$)/g)].map(([end]) => end);
		expect(ends).toEqual(['15 10', '10 15', '5 10', '10 5', '15 10']);
	});

	it('go round the other way where asked, by the shorter of the turns', () => {
		const { first } = drawn((brush) => {
			brush.beginPath();
			brush.arc(0, 0, 10, 0, 1.5 * Math.PI, true);
			brush.stroke();
		});
		// A quarter against the clock: 4/3 tan(22.5°) = 0.5523 of the radius to each handle.
		expect(first['d']).toBe('M10 0C10 -5.52 5.52 -10 0 -10');
	});

	it('pass over points that are no numbers', () => {
		const { first } = drawn((brush) => {
			brush.beginPath();
			brush.moveTo(0, 0);
			brush.lineTo(NaN, 5);
			brush.lineTo(5, Infinity);
			brush.lineTo(7, 7);
			brush.stroke();
		});
		expect(first['d']).toBe('M0 0L7 7');
	});

	it('are filled by the rule they are given', () => {
		const { first } = drawn((brush) => {
			brush.beginPath();
			brush.rect(0, 0, 9, 9);
			brush.rect(1, 1, 7, 7);
			brush.fill('evenodd');
		});
		expect(first['fill-rule']).toBe('evenodd');
	});
});

describe('clipping', () => {
	const field = (brush: ReturnType<typeof newSheet>['brush'], size: number) => {
		brush.beginPath();
		brush.rect(0, 0, size, size);
		brush.clip();
	};

	it('cuts what follows by all outlines at once, until restored', () => {
		const { root, marks } = drawn((brush) => {
			brush.save();
			field(brush, 50);
			brush.save();
			field(brush, 20);
			brush.fillRect(0, 0, 1, 1);
			brush.restore();
			brush.fillRect(0, 0, 2, 2);
			brush.restore();
			brush.fillRect(0, 0, 3, 3);
		});
		const cutBy = (path: Element) => {
			const found: string[] = [];
			for (let at: Element | null = path; at; at = at.parentElement) {
				const id = /#(.+)\)/.exec(at.getAttribute('clip-path') ?? '')?.[1];
				if (id) found.push(root.querySelector(`[id="${id}"] path`)?.getAttribute('d') ?? id);
			}
			return found;
		};
		const paths = marks.flatMap((mark) =>
			mark.localName === 'path' ? [mark] : [...mark.querySelectorAll('path')]
		);
		const [large, small] = ['M0 0L50 0L50 50L0 50Z', 'M0 0L20 0L20 20L0 20Z'];
		expect(paths.map(cutBy)).toEqual([[small, large], [large], []]);
	});

	it('writes the same outline once', () => {
		const { root } = drawn((brush) => {
			for (const x of [1, 2]) {
				brush.save();
				field(brush, 50);
				brush.fillRect(x, 0, 1, 1);
				brush.restore();
			}
		});
		expect(root.querySelectorAll('clipPath')).toHaveLength(1);
	});
});

describe('text', () => {
	it.each([
		['left', null],
		['center', 'middle'],
		['right', 'end']
	] as const)('aligned %s is anchored %s', (align, anchor) => {
		const { marks } = drawn((brush) => {
			brush.textAlign = align;
			brush.fillText('2030', 40, 20);
		});
		expect(marks[0]?.getAttribute('text-anchor')).toBe(anchor);
		expect(marks[0]?.getAttribute('x')).toBe('40');
	});

	it.each([
		// What stands above the baseline of letters is 9; above the one asked for, 9, 0, 6 and 12.
		['alphabetic', '20'],
		['top', '29'],
		['middle', '23'],
		['bottom', '17']
	] as const)('on the %s line stands on the baseline of letters', (baseline, y) => {
		const { first } = drawn((brush) => {
			brush.textBaseline = baseline;
			brush.fillText('kEUR', 0, 20);
		});
		expect(first['y']).toBe(y);
	});

	it('keeps its room in any font, and no more than it is allowed', () => {
		const { marks } = drawn((brush) => {
			brush.fillText('abcde', 0, 0);
			brush.fillText('abcde', 0, 0, 30);
		});
		expect(marks.map((mark) => mark.getAttribute('textLength'))).toEqual(['40', '30']);
	});

	it('turned stands in its own plane', () => {
		const { first } = drawn((brush) => {
			brush.translate(30, 60);
			brush.rotate(-Math.PI / 2);
			brush.fillText('years', 5, 0);
		});
		expect(first).toMatchObject({ x: '5', y: '0', transform: 'matrix(0 -1 1 0 30 60)' });
	});

	it('takes style, weight and size from the font, and ends its families with a generic one', () => {
		const { marks } = drawn((brush) => {
			for (const font of ['italic 650 14.5px/1.2 Ysabeau, serif', '12px Ysabeau']) {
				brush.font = font;
				brush.fillText('x', 0, 0);
			}
		});
		expect(attributesOf(marks[0])).toMatchObject({
			...{ 'font-style': 'italic', 'font-weight': '650', 'font-size': '14.5' },
			'font-family': 'Ysabeau, serif'
		});
		expect(marks[1]?.getAttribute('font-family')).toBe('Ysabeau, sans-serif');
		expect(marks[1]?.hasAttribute('font-weight')).toBe(false);
	});

	it('is given its edge by a stroke without a fill', () => {
		const { first } = drawn((brush) => {
			brush.strokeStyle = '#fff';
			brush.lineWidth = 5;
			brush.lineJoin = 'round';
			brush.strokeText('x', 0, 0);
		});
		expect(first).toMatchObject({
			...{ fill: 'none', stroke: '#ffffff', 'stroke-width': '5', 'stroke-linejoin': 'round' }
		});
	});
});

describe('colours', () => {
	it.each([
		['rgb(1, 2, 3)', 'rgb(1, 2, 3)', null],
		['rgba(1, 2, 3, 0.25)', 'rgb(1, 2, 3)', '0.25'],
		['rgb(1 2 3 / 40%)', 'rgb(1, 2, 3)', '0.4'],
		['#ABC', '#aabbcc', null],
		['#11223380', '#112233', '0.502'],
		['oklch(0.5 0.1 200)', 'rgb(9, 9, 9)', '0.5']
	])('%s is written as every reader knows it', (css, fill, opacity) => {
		const { marks } = drawn((brush) => {
			brush.fillStyle = css;
			brush.fillRect(0, 0, 1, 1);
		});
		expect(marks[0]?.getAttribute('fill')).toBe(fill);
		expect(marks[0]?.getAttribute('fill-opacity')).toBe(opacity);
	});

	it('are thinned by the alpha of all, which restore brings back', () => {
		const { marks } = drawn((brush) => {
			brush.fillStyle = 'rgba(1, 2, 3, 0.5)';
			brush.save();
			brush.globalAlpha = 0.5;
			brush.fillRect(0, 0, 1, 1);
			brush.restore();
			brush.fillRect(0, 0, 1, 1);
		});
		expect(marks.map((mark) => mark.getAttribute('fill-opacity'))).toEqual(['0.25', '0.5']);
	});

	it('that let all through leave no mark', () => {
		const { marks } = drawn((brush) => {
			brush.fillStyle = 'transparent';
			brush.strokeStyle = 'transparent';
			brush.fillRect(0, 0, 1, 1);
			brush.strokeRect(0, 0, 1, 1);
		});
		expect(marks).toEqual([]);
	});
});

describe('strokes', () => {
	it('keep the width before where one is none, as on a canvas', () => {
		const { first } = drawn((brush) => {
			brush.lineWidth = 3;
			for (const none of [0, -1, NaN, Infinity]) brush.lineWidth = none;
			brush.strokeRect(0, 0, 1, 1);
		});
		expect(first['stroke-width']).toBe('3');
	});

	it('go through an odd number of dashes twice, and forget them when told', () => {
		const { marks } = drawn((brush) => {
			brush.setLineDash([5]);
			brush.strokeRect(0, 0, 1, 1);
			brush.setLineDash([]);
			brush.strokeRect(0, 0, 1, 1);
		});
		expect(marks.map((mark) => mark.getAttribute('stroke-dasharray'))).toEqual(['5 5', null]);
	});
});

describe('clearing', () => {
	it('takes all of a drawing away', () => {
		const { marks } = drawn((brush) => {
			brush.canvas = Object.assign(document.createElement('canvas'), { width: 20, height: 20 });
			brush.fillRect(0, 0, 1, 1);
			brush.clearRect(0, 0, 20, 20);
		});
		expect(marks).toEqual([]);
	});

	it('is refused for a part, which would leave the marks standing', () => {
		const { brush } = newSheet();
		brush.canvas = Object.assign(document.createElement('canvas'), { width: 20, height: 20 });
		expect(() => brush.clearRect(0, 0, 10, 20)).toThrow('the whole of a drawing');
	});
});

describe('fills that are no colour', () => {
	it('are refused where nobody knows how they were drawn', () => {
		const { brush } = newSheet();
		brush.fillStyle = {} as CanvasPattern;
		expect(() => brush.fillRect(0, 0, 1, 1)).toThrow('neither a colour nor a known tile');
	});
});
