/** What passes between the page and the worker that holds tables on their way in. */
import type { PointMapping, PointsRead } from '$lib/exchange/points/read-points';
import type { Held, ShortLooked } from '$lib/exchange/table/desk';
import type { Log } from '$lib/exchange/log/log';
import type { TypicalEntries } from '$lib/exchange/table/implausible';
import type { LogLook } from '$lib/exchange/log/look';
import type { LogProposed } from '$lib/exchange/log/propose-log';
import type { Mapping } from '$lib/exchange/table/mapping';
import type { PairMapping } from '$lib/exchange/table/pair-mapping';
import type { PairsLooked } from '$lib/exchange/table/pairs';
import type { MemberChoices } from '$lib/exchange/table/new-members';
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { Workbook } from '$lib/workbook/schema';

export type TableRequest =
	/** The workbook that all tables come into, as it is from now on. */
	| { readonly kind: 'workbook'; readonly workbook: Workbook }
	/** The table is on its way in no more. */
	| { readonly kind: 'put_away' }
	| {
			readonly kind: 'read';
			readonly bytes: Uint8Array<ArrayBuffer>;
			readonly name: string;
	  }
	| { readonly kind: 'propose'; readonly sheet: number }
	| {
			readonly kind: 'look';
			readonly sheet: number;
			readonly mapping: Mapping;
			readonly choices: MemberChoices;
			/** Entries that stand as typical values. */
			readonly typical: TypicalEntries;
	  }
	/** Of the pairs of a relation. */
	| { readonly kind: 'propose_pairs'; readonly sheet: number; readonly relation: string }
	| {
			readonly kind: 'look_pairs';
			readonly sheet: number;
			readonly mapping: PairMapping;
			readonly choices: MemberChoices;
	  }
	/** Of a log that is summed. */
	| {
			readonly kind: 'propose_log';
			readonly sheet: number;
			/** Quantities whose totals are asked for. */
			readonly wanted: readonly string[];
	  }
	| {
			readonly kind: 'look_log';
			readonly sheet: number;
			readonly log: Log;
			readonly typical: TypicalEntries;
	  }
	/** Of points for a fit. */
	| { readonly kind: 'propose_points'; readonly sheet: number; readonly fit: Calibration }
	| {
			readonly kind: 'points';
			readonly sheet: number;
			readonly mapping: PointMapping;
			readonly fit: Calibration;
	  };

export interface TableAnswers {
	read: Held;
	propose: Mapping;
	look: ShortLooked;
	propose_pairs: PairMapping;
	look_pairs: PairsLooked;
	propose_log: LogProposed;
	propose_points: PointMapping;
	points: { readonly read: PointsRead; readonly digest: string };
	look_log: LogLook & { readonly digest: string };
}

/** `desk` is which of the tables is asked about. */
export type TableMessage = {
	readonly id: number;
	readonly desk: number;
	readonly request: TableRequest;
};
export type TableAnswer =
	| { readonly id: number; readonly share: number }
	| { readonly id: number; readonly answer: TableAnswers[keyof TableAnswers] }
	| { readonly id: number; readonly failed: string };
