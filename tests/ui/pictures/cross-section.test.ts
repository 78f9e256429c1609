import { describe, expect, it } from 'vitest';
import { DIVIDES_BY_ZERO } from '$lib/engine/state';
import { discsOf, drawSection } from '$lib/ui/pictures/cross-section/cross-section';
import { handOf, sourceOf } from '$lib/ui/figure/open';
import { ringsOf, sectionOf } from '$lib/ui/pictures/cross-section/section';
import {
	dimensionsOf,
	layerRows,
	remarkOf,
	sectionSummary,
	sectionTable,
	sectionTexts
} from '$lib/ui/pictures/cross-section/section-words';
import { wrapped } from '$lib/ui/pictures/cross-section/section-pieces';
import { openWith, pipes, pipeValues, sectionPicture, type Written } from './hand';

function sectionWith(subject: string, gauged: Written | null = null, base = pipeValues) {
	const open = openWith(
		pipes,
		{ base, ...(gauged ? { gauged: { ...base, ...gauged } } : {}) },
		gauged ? 'gauged' : 'base'
	);
	const picture = sectionPicture;
	return sectionOf({
		...{ picture, base: sourceOf(open, 'base'), hand: handOf(open), subject, units: open.units }
	});
}
const draw = (section: ReturnType<typeof sectionWith>, width = 1128) =>
	drawSection(dimensionsOf(section), sectionTexts(section, 'en'), width);

describe('the ring', () => {
	it('is to scale: the bore of a 15 mm pipe with 1.6 mm of wall is 11.8 of 15', () => {
		const radii = discsOf(dimensionsOf(sectionWith('A15')), 150).map((disc) => disc.radius);
		// 10 px a mm of radius × 2: cover 0.2 mm is 4 px, barrier 2 px, inner 26 px.
		expect(radii.map((radius) => Number(radius.toFixed(6)))).toEqual([150, 146, 144, 118]);
	});
	it('ends with the bore, and begins with the outer layer', () => {
		const roles = discsOf(dimensionsOf(sectionWith('A15')), 150).map((disc) => disc.role);
		expect(roles).toEqual(['resin', 'barrier', 'resin', null]);
	});
	it('stands in the picker beside the others, to one scale', () => {
		const open = openWith(pipes, { base: pipeValues });
		const rings = ringsOf(sectionPicture, sourceOf(open, 'base'));
		expect(rings.map((ring) => ring.radius)).toEqual([13.5, 27]); // 15 and 30 mm
		expect(rings[1]!.wall).toBeCloseTo(5.4, 9); // 3 mm × 54 px ÷ 30 mm
	});
});

describe('the magnified wall', () => {
	it('divides its width by the thicknesses, the bore at the left', () => {
		const { bands } = draw(sectionWith('A15')).wall;
		const [inner, barrier, cover] = bands.map((band) => band.width) as [number, number, number];
		expect(inner / barrier).toBeCloseTo(13, 9); // 1.3 ÷ 0.1
		expect(cover / barrier).toBeCloseTo(2, 9); // 0.2 ÷ 0.1
		expect(bands[1]!.x).toBeCloseTo(bands[0]!.x + inner, 9);
	});
	it('makes wide layers pale and leaves thin ones strong', () => {
		const soft = draw(sectionWith('A15')).wall.bands.map((band) => band.soft);
		expect(soft).toEqual([true, false, true]);
	});
	it('puts a broken line where the scenario in hand would set the wall', () => {
		const section = sectionWith('A15', { wall: { A15: 1.52, B30: 3 } });
		const { wall, strokes, texts } = draw(section);
		const first = wall.bands[0]!.x;
		const whole = wall.bands.reduce((sum, band) => sum + band.width, 0);
		const at = Number(/^M([\d.]+)/.exec(strokes.find((stroke) => stroke.tone === 'hand')!.d)![1]);
		expect((at - first) / whole).toBeCloseTo(1.52 / 1.6, 6);
		expect(texts.find((text) => text.tone === 'hand')!.text).toBe(
			'1.520 with Better gauging, −0.080'
		);
	});
	it('makes room where the scenario in hand sets a thicker wall', () => {
		const drawing = draw(sectionWith('A15', { wall: { A15: 2, B30: 3 } }));
		const at = Number(
			/^M([\d.]+)/.exec(drawing.strokes.find((stroke) => stroke.tone === 'hand')!.d)![1]
		);
		expect(at).toBeLessThanOrEqual(1128 - 246);
	});
	it('draws no broken line where nothing differs', () => {
		const section = sectionWith('A15', {});
		expect(section.selectedScenario).toBeNull();
		expect(draw(section).strokes.some((stroke) => stroke.tone === 'hand')).toBe(false);
	});
	it.each([358, 600, 888, 1128])('keeps every text within a width of %i', (width) => {
		const { texts } = draw(sectionWith('A15', { wall: { A15: 1.52, B30: 3 } }), width);
		for (const { x } of texts) {
			expect(x).toBeGreaterThanOrEqual(0);
			expect(x).toBeLessThanOrEqual(width);
		}
	});
	it('shows the chain of dimensions: 1.5 + 0.04 + 0.06 = 1.6', () => {
		const words = draw(sectionWith('A15')).texts.map((text) => text.text);
		expect(words).toContain('1.500 minimum wall');
		expect(words).toContain('0.040 eccentricity');
		expect(words).toContain('0.060 spread');
		expect(words).toContain('1.600 mm wall set-point');
	});
	it('has a scale bar of a round length for the ring and one for the wall', () => {
		const words = draw(sectionWith('A15')).texts.map((text) => text.text);
		expect(words).toContain('5 mm');
		expect(words).toContain('0.2 mm');
	});
	it('breaks long facts between words', () => {
		expect(wrapped('8.8 % giveaway over the minimum wall', 16)).toEqual([
			'8.8 % giveaway',
			'over the minimum',
			'wall'
		]);
	});
});

describe('the layers in a table', () => {
	it('run from the outside in and leave out layers that a product has not', () => {
		expect(layerRows(sectionWith('A15'), 'en').rows.map((row) => row.name)).toEqual([
			'cover',
			'barrier',
			'inner pipe'
		]);
		expect(sectionWith('B30').layers).toHaveLength(1);
	});
	it('add up: 50 + 5 + 10 = 65 g/m', () => {
		const { total } = layerRows(sectionWith('A15'), 'en');
		expect(total.map((figure) => figure.text)).toEqual(['1.600', '65.00', '0.1600']);
	});
	it('say which layer costs more than it weighs', () => {
		// 5 of 65 g is 7.7 %, 0.04 of 0.16 EUR is 25 %.
		expect(remarkOf(sectionWith('A15'))).toBe(
			'the barrier is 8 % of the mass and 25 % of the money'
		);
		expect(remarkOf(sectionWith('B30'))).toBe('');
	});
	it('give the scenario in hand a row with its differences', () => {
		const gauged = {
			wall: { A15: 1.5, B30: 3 },
			mass: { ...(pipeValues['mass'] as object), 'A15 inner': 48 }
		};
		const { hand } = layerRows(sectionWith('A15', gauged), 'en');
		expect(hand!.figures.map((figure) => figure.difference)).toEqual(['−0.100', '−2.00', '0.0000']);
	});
	it('leave with all digits', () => {
		expect(sectionTable(sectionWith('A15')).rows).toEqual([
			['cover', 'PE', 0.2, 10, 0.02],
			['barrier', 'EVOH', 0.1, 5, 0.04],
			['inner pipe', 'PE', 1.3, 50, 0.1],
			['Wall', '', 1.6, 65, 0.16]
		]);
	});
});

describe('a wall without a value', () => {
	const broken: Written = { ...pipeValues, wall: { A15: { state: DIVIDES_BY_ZERO }, B30: 3 } };
	it('is not drawn, and says whose error it is', () => {
		const section = sectionWith('A15', null, broken);
		expect(section.missing?.kind).toBe('error');
		expect(section.missing?.because).toBe('error of wall set-point itself');
		expect(sectionSummary(section, 'en')).toContain('cannot be drawn: error of wall set-point');
	});
	it('leaves an empty place in the picker, not a ring of zero wall', () => {
		const open = openWith(pipes, { base: broken });
		expect(ringsOf(sectionPicture, sourceOf(open, 'base'))[0]!.radius).toBe(0);
	});
});

describe('the summary', () => {
	it('says the chain and the layers in words', () => {
		expect(sectionSummary(sectionWith('A15'), 'en')).toBe(
			'A15, barrier pipe 15 mm: outside diameter 15.0 mm, wall 1.600 mm, which is 1.500 minimum wall plus ' +
				'0.040 eccentricity plus 0.060 spread. From the outside in: cover 0.200 mm, barrier 0.100 mm and inner pipe 1.300 mm.'
		);
	});
});
