import { expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { pieceLines } from '$lib/ui/why/explain';
import { cellIn, scenario, shop } from '../engine/model-shop';

it('the numbers of a formula stand with their units, so that the product of a line can be followed', () => {
	const model = Model.open(shop([scenario('faster', 'base', { speed: { L1: 20 } })]));
	const { formula } = model.why('faster', cellIn(model, 'metres', 'L1'));
	const lines = formula!.map((piece) => pieceLines(model.layout, piece, 'en'));
	expect(lines.map(({ here }) => here)).toEqual(['20 m/min', ' * ', '1 h']);
	expect(lines.map(({ reference }) => reference)).toEqual(['10 m/min', ' * ', 'same']);
	const [sum] = model.why('faster', cellIn(model, 'total')).formula!;
	expect(pieceLines(model.layout, sum!, 'en').here).toMatch(/^9,?600 \S+/);
});
