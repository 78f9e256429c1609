/**
 * With which sign a column writes decimals, from all of its cells together: 26,90 says it, 1,234 does not. What a
 * column leaves open, the other columns of the file say, then the mark that parts the columns.
 */
import { sampleOf, type Grid } from './grid';
import { numberParts, signSaid, type DecimalSign } from './number-text';

export interface ColumnSign {
	/** Null: nothing in the file says it. */
	readonly sign: DecimalSign | null;
	/** Its own numbers say it, and not the rest of the file. */
	readonly own: boolean;
	/** Whether any of its numbers has a point or a comma. */
	readonly seen: boolean;
}

export function decimalSigns(grid: Grid): ColumnSign[] {
	const votes = grid.head.map((_, column) => votesOf(grid, column));
	const all = { '.': 0, ',': 0 };
	for (const vote of votes) for (const sign of ['.', ','] as const) all[sign] += vote[sign];
	// A column that is parted by commas holds none in its numbers: common practice, no source.
	const byParter = grid.parter === ',' ? '.' : null;
	const ofFile = all['.'] > 0 === all[','] > 0 ? byParter : mostOf(all);
	return votes.map((vote) => ({
		sign: mostOf(vote) ?? ofFile,
		own: mostOf(vote) !== null,
		seen: vote['.'] + vote[','] + vote.either > 0
	}));
}

function votesOf(grid: Grid, column: number) {
	const votes = { '.': 0, ',': 0, either: 0 };
	for (const cell of sampleOf(grid, column)) {
		// Most cells say nothing, and a large file has a million of them.
		if (typeof cell === 'number' || !/[.,]/.test(cell)) continue;
		const parts = numberParts(cell);
		const said = parts && signSaid(parts.body);
		if (said && said !== 'none') votes[said]++;
	}
	return votes;
}

/** Where both stand in one column, the rarer ones are slips, which are refused row by row. */
function mostOf(votes: { readonly '.': number; readonly ',': number }): DecimalSign | null {
	if (votes['.'] === votes[',']) return votes['.'] > 0 ? '.' : null;
	return votes['.'] > votes[','] ? '.' : ',';
}
