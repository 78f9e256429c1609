/** A log as a person says it is summed: what each column of the file is, and what becomes of its rows. */
import type { KeptLog, LogSum } from '$lib/workbook/schema';
import type { DecimalSign } from '../table/number-text';

export type LogColumn =
	| { readonly is: 'nothing' }
	/** Which member of a set, or an axis, the row is about. */
	| { readonly is: 'member'; readonly of: string }
	| { readonly is: 'date'; readonly dayFirst: boolean | null }
	/** Empty unit: nobody has said it. */
	| { readonly is: 'number'; readonly unit: string; readonly decimal: DecimalSign | null };

export interface Only {
	readonly column: number;
	readonly values: readonly string[];
}

/** A sum on its way: what it is entered into may not be said yet. */
export type OpenSum = Omit<LogSum, 'quantity'> & { readonly quantity: string | null };

export interface Log {
	/** One for each column of the file. */
	readonly columns: readonly LogColumn[];
	readonly scenario: string;
	readonly dates: NonNullable<KeptLog['dates']>;
	readonly always: NonNullable<KeptLog['always']>;
	readonly only: Only | null;
	/** Null: nobody has said it. Two dates, where a person names them. */
	readonly covers:
		'rows' | 'months' | 'years' | { readonly from: number; readonly to: number } | null;
	readonly zeroWithoutRows: boolean;
	readonly sums: readonly OpenSum[];
}

/** The column that dates the rows; −1 where there is none. */
export const dateColumn = ({ columns }: Log): number =>
	columns.findIndex(({ is }) => is === 'date');

/** What takes a column of numbers. */
export const takesColumn = (take: LogSum['take']): boolean => take !== 'count' && take !== 'share';
