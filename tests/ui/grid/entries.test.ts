/** For which cells an entry is: all of a folded row that are there, and what has a row of its own even where it is not. */
import { expect, it } from 'vitest';
import { ABSENT } from '$lib/engine/state';
import { targetsOf } from '$lib/ui/grid/entries';
import type { QuantityRow } from '$lib/ui/rows';
import type { Session } from '$lib/ui/session.svelte';
import { layout, resultsOf } from '../shop';

const quantity = layout.byName.get('mass')!;
const results = resultsOf('base', [2.02, 0.06, { state: ABSENT }]);
const session = {
	...{ layout, baseId: 'base', readOnly: false, results: new Map([['base', results]]) }
} as unknown as Session;
const row = (from: number, to: number, open: boolean | null) =>
	({ kind: 'quantity', quantity, from, to, open }) as unknown as QuantityRow;
const members = (of: QuantityRow) => targetsOf(session, of, 'base').map(({ at }) => at.join());

it('leaves out what is absent under a folded row, and takes it where it has a row of its own', () => {
	const { base } = quantity;
	expect(members(row(base, base + 2, false))).toEqual(['A15']);
	expect(members(row(base + 1, base + 2, null))).toEqual(['B22']);
});

it('has no cell where nothing may be changed, nor in a result', () => {
	const { base } = quantity;
	const locked = { ...session, readOnly: true } as unknown as Session;
	expect(targetsOf(locked, row(base, base + 2, false), 'base')).toEqual([]);
	const cost = layout.byName.get('cost')!;
	const result = { ...row(cost.base, cost.base + 2, false), quantity: cost } as QuantityRow;
	expect(targetsOf(session, result, 'base')).toEqual([]);
});
