/** Pieces of a plan moved on its board: where they may go, what is entered, and by which pointers and keys. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { ABSENT, OK } from '$lib/engine/state';
import { boardOf } from '$lib/ui/programmes/board';
import { Carrying } from '$lib/ui/programmes/carrying.svelte';
import {
	entriesFor,
	landingAt,
	pieceAt,
	pieceText,
	type Piece,
	type Spot
} from '$lib/ui/programmes/moving';
import { smallPlant } from '../programmes/small-plant';

const workbook = smallPlant((book) => ({
	...book,
	relations: book.relations!.map((one) => ({ ...one, label: 'What runs where' }))
}));
const layout = layOut(workbook);
const made = layout.byName.get('made')!;
const values = new Float64Array(layout.cells);
// Products, lines and months in turn; A does not run on L2.
values.set([900, 400, 100, 600, 500, 0], made.base);
const results = {
	scenario: 'base',
	values,
	states: new Uint8Array(layout.cells).fill(OK)
};
const board = boardOf(
	{ workbook, layout, results, scenario: 'base', each: {}, across: 'month', all: false },
	workbook.programmes![0]!,
	null
);
const [L1, L2] = [0, 1];
const at = (resource: number, column: number): Spot => ({ resource, column });
const landing = (piece: Piece, to: Spot, read = results) =>
	landingAt({ layout, results: read }, board, 'month', piece, to);
const [A, B] = [pieceAt(board, at(L1, 0), 0)!, pieceAt(board, at(L1, 0), 1)!];

describe('a piece of the board', () => {
	it('is what runs in a month on a line; where nothing does there is none', () => {
		expect(A).toMatchObject({ label: 'A', at: ['A', 'L1', 'jan'], amount: 900 });
		expect(pieceText(board, B)).toBe('B of L1, jan');
		expect(pieceAt(board, at(L2, 1), 0)).toBeNull();
		expect(pieceAt(board, at(L2, 0), 5)).toBeNull();
	});

	it('is no yes, which is no amount', () => {
		const { quantity } = made;
		const yes = { ...made, quantity: { ...quantity, type: 'yes_no' as const } };
		const resources = board.resources.map((resource) => ({
			...resource,
			rows: resource.rows.map((row) => ({ ...row, quantity: yes }))
		}));
		expect(pieceAt({ ...board, resources }, at(L1, 0), 0)).toBeNull();
	});

	it('goes to another line or month that it can run in, and is added to what runs there', () => {
		const found = landing(B, at(L2, 0));
		expect(found).toEqual({ ok: true, at: ['B', 'L2', 'jan'], value: 500 });
		if (!found.ok) return;
		expect(entriesFor(B, found)).toEqual([
			{ at: ['B', 'L1', 'jan'], value: 0 },
			{ at: ['B', 'L2', 'jan'], value: 600 }
		]);
		expect(landing(B, at(L1, 1))).toMatchObject({ ok: true, value: 600 });
	});

	it('is refused, with the reason, where it cannot run, where it is left out and where it stands', () => {
		const why = (piece: Piece, to: Spot, read = results) => {
			const found = landing(piece, to, read);
			return found.ok ? '' : found.because;
		};
		expect(why(A, at(L2, 0))).toBe(
			'A cannot run on L2: the two do not stand together in “What runs where”.'
		);
		expect(why(A, at(L1, 0))).toBe('It runs here now.');
		const states = results.states.slice();
		states[made.base + 1] = ABSENT;
		expect(why(A, at(L1, 1), { ...results, states })).toBe('A does not exist for L1, feb here.');
	});
});

describe('on its way', () => {
	afterEach(() => vi.useRealTimers());
	const pointer = (type: string, x: number, y: number, pointerType = 'mouse') =>
		Object.assign(new MouseEvent(type, { clientX: x, clientY: y, cancelable: true }), {
			...{ pointerId: 1, pointerType }
		}) as unknown as PointerEvent;
	function begun() {
		const dropped: Spot[] = [];
		const carrying = new Carrying({
			spotAt: (x) => (x > 100 ? at(L2, 0) : null),
			drop: (_, to) => dropped.push(to)
		});
		return { carrying, dropped };
	}

	it('a pointer drags once it has gone a few pixels, and drops where it is let go', () => {
		const { carrying, dropped } = begun();
		carrying.press(pointer('pointerdown', 10, 10), B);
		window.dispatchEvent(pointer('pointermove', 12, 10));
		expect(carrying.piece).toBeNull();
		window.dispatchEvent(pointer('pointermove', 150, 10));
		expect([carrying.piece, carrying.over, carrying.hasDragged]).toEqual([B, at(L2, 0), true]);
		window.dispatchEvent(pointer('pointerup', 150, 10));
		expect([carrying.piece, dropped]).toEqual([null, [at(L2, 0)]]);
		// Nothing listens any more.
		window.dispatchEvent(pointer('pointermove', 300, 10));
		expect(carrying.piece).toBeNull();
	});

	it('a press that goes nowhere is a click, and Escape and the outside leave all as it was', () => {
		const { carrying, dropped } = begun();
		carrying.press(pointer('pointerdown', 10, 10), B);
		window.dispatchEvent(pointer('pointerup', 10, 10));
		expect(carrying.hasDragged).toBe(false);
		carrying.press(pointer('pointerdown', 10, 10), B);
		window.dispatchEvent(pointer('pointermove', 150, 10));
		window.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }));
		expect(carrying.piece).toBeNull();
		carrying.press(pointer('pointerdown', 10, 10), B);
		window.dispatchEvent(pointer('pointermove', 50, 10));
		window.dispatchEvent(pointer('pointerup', 50, 10));
		expect(dropped).toEqual([]);
	});

	it('a finger that rests takes it up and keeps the page where it is; one that moves at once scrolls', () => {
		vi.useFakeTimers();
		const { carrying, dropped } = begun();
		carrying.press(pointer('pointerdown', 10, 10, 'touch'), B);
		window.dispatchEvent(pointer('pointermove', 150, 10, 'touch'));
		vi.advanceTimersByTime(1000);
		expect(carrying.piece).toBeNull();
		carrying.press(pointer('pointerdown', 10, 10, 'touch'), B);
		vi.advanceTimersByTime(400);
		expect(carrying.piece).toBe(B);
		const touch = new Event('touchmove', { cancelable: true });
		window.dispatchEvent(touch);
		expect(touch.defaultPrevented).toBe(true);
		window.dispatchEvent(pointer('pointermove', 150, 10, 'touch'));
		window.dispatchEvent(pointer('pointerup', 150, 10, 'touch'));
		expect(dropped).toEqual([at(L2, 0)]);
	});
});
