/** Which column names which of a pair, kept and used for the next file: the same, with headings gone, in a changed workbook. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { keptPairsOf, reusePairs } from '$lib/exchange/table/kept-pairs';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { proposePairs, type PairMapping } from '$lib/exchange/table/pair-mapping';
import { lookOverPairs } from '$lib/exchange/table/pairs';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findRelation, findSet } from '$lib/workbook/lookup';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import { plant } from '../../workbook/plant';

/** PX15B runs on L1 and L2, PX20 on L1. */
const runs = findRelation(plant, 'runs')!;

function gridOf(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
const headOf = (text: string) => gridOf(text).head;

/** What a person said of this file, kept. */
function keptOf(text: string, of: PairMapping['of'], mark: number | null = null): KeptTable {
	const kept = keptPairsOf('Runs', headOf(text), { relation: 'runs', of, mark });
	if (!kept) throw new Error('Nothing is kept.');
	return kept;
}

describe('which column names which', () => {
	const text = 'machine;what;made\nL2;PX20;x\nL2;PX15B;-\n';

	it('is kept with the headings, and used again whatever their order', () => {
		const kept = keptOf(text, [1, 0], 2);
		expect(kept).toEqual({
			title: 'Runs',
			columns: ['machine', 'what', 'made'].map((heading) => ({ heading, is: 'nothing' })),
			pairs: { relation: 'runs', first: 1, second: 0, mark: 2 }
		});
		expect(reusePairs(kept, headOf('MADE; What;machine\n-;PX20;L2\n'), plant)).toEqual({
			mapping: { relation: 'runs', of: [1, 2], mark: 0 },
			fresh: [],
			gone: []
		});
	});

	it('is kept where headings name members, and a new member has a heading of its own', () => {
		const kept = keptOf('Product;L1\nPX20;x\n', [0, 'heads']);
		expect(kept.pairs).toEqual({ relation: 'runs', first: 0 });
		expect(reusePairs(kept, ['Product', 'L1', 'L2'], plant)).toEqual({
			mapping: { relation: 'runs', of: [0, 'heads'], mark: null },
			fresh: ['L2'],
			gone: []
		});
	});

	it('is not kept before it is said', () => {
		const mapping = proposePairs(gridOf('a;b\n1;2\n'), runs, plant);
		expect(keptPairsOf('Runs', ['a', 'b'], mapping)).toBeNull();
	});

	it('is asked about where its column is gone, and altogether where the marks are', () => {
		const kept = keptOf(text, [1, 0], 2);
		const noLine = reusePairs(kept, ['what', 'made'], plant)!;
		expect([noLine.mapping.of, noLine.gone]).toEqual([[0, null], ['machine']]);
		// Each row would count as a pair, those that say no as well.
		const noMarks = 'machine;what\nL2;PX20\n';
		const { mapping, gone } = reusePairs(kept, headOf(noMarks), plant)!;
		expect([mapping.of, gone]).toEqual([[null, null], ['made']]);
		expect(lookOverPairs(gridOf(noMarks), mapping, NO_CHOICES, plant).ok).toBe(false);
	});
});

describe('a workbook that has changed since', () => {
	const kept = keptOf('machine;what\nL2;PX20\n', [1, 0]);
	const after = (command: Command): Workbook => {
		const made = applyCommand(plant, command);
		if (!made.ok) throw new Error(made.problem.message);
		return made.workbook;
	};

	it('is matched where sets and members are called otherwise', () => {
		const line = findSet(plant, 'line')!;
		const workbook = after({
			kind: 'several',
			commands: [
				{ kind: 'describe_set', set: 'line', label: 'Extrusion machine' },
				{ kind: 'replace_member', set: 'line', id: 'L2', member: { ...line.members[1]!, id: 'E2' } }
			]
		});
		const text = 'machine;what\nE2;PX20\n';
		const { mapping } = reusePairs(kept, headOf(text), workbook)!;
		const looked = lookOverPairs(gridOf(text), mapping, NO_CHOICES, workbook);
		expect(looked.ok && looked.look.fresh.map(({ pair }) => pair)).toEqual([['PX20', 'E2']]);
	});

	it('is matched under another label of the relation, and not at all without it', () => {
		const other = { ...plant, relations: [{ ...runs, label: 'Machines of a pipe' }] };
		expect(reusePairs(kept, ['machine', 'what'], other)?.mapping.of).toEqual([1, 0]);
		expect(reusePairs(kept, ['machine', 'what'], { ...plant, relations: [] })).toBeNull();
	});

	it('takes a table of values for none of pairs', () => {
		const { pairs: _pairs, ...values } = kept;
		expect(reusePairs(values, ['machine', 'what'], plant)).toBeNull();
	});
});
