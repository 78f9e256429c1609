/**
 * Every edit that a workbook knows, as plain data that can be kept, sent and described.
 *
 * Places in lists count from 0. `also: true` says yes to the consequence that a refusal named: what
 * uses the removed thing is taken out as well, or left to show the missing name.
 */
import type { Calibration } from '../calibration-schema';
import type { Frozen } from '../frozen-schema';
import type { Patch } from '../patch';
import type { Programme, ProgrammePlan } from '../programme-schema';
import type { KeptQuote, Letterhead } from '../quote-list-schema';
import type {
	KeptTable,
	Member,
	Quantity,
	Scalar,
	Scenario,
	SetDefinition,
	Sheet,
	Tick,
	Workbook
} from '../schema';
import type { Study } from '../study-schema';
import type { Ran } from '../study-shapes';
import type { ValueEntry } from '../values';

export interface InputEntry extends ValueEntry {
	readonly quantity: string;
	/** Left out: the cell follows the parent again; in the base nothing is entered. Null: cleared. */
	readonly value?: Scalar | undefined;
}

/** Where a change stood among its scenario's changes, and what its note said: for an exact undo. */
export interface ChangePlace {
	readonly quantity: string;
	readonly index: number;
	readonly note?: string | undefined;
}

export type ScenarioHeader = Omit<Scenario, 'changes'>;

export type Command =
	| {
			readonly kind: 'set_inputs';
			readonly scenario: string;
			readonly entries: readonly InputEntry[];
			readonly places?: readonly ChangePlace[] | undefined;
	  }
	/** Why a scenario changes a quantity, or where it has that from; left out: nothing is said. */
	| {
			readonly kind: 'note_change';
			readonly scenario: string;
			readonly quantity: string;
			readonly note?: string | undefined;
	  }
	| QuantityCommand
	| SheetCommand
	| SetCommand
	| MemberCommand
	| ScenarioCommand
	| StudyCommand
	| ProgrammeCommand
	| TableCommand
	| CalibrationCommand
	| FrozenCommand
	| QuoteCommand
	/** Lines of the review list ticked off, or with an id alone, open again. */
	| {
			readonly kind: 'set_ticks';
			readonly ticks: readonly (Tick | Pick<Tick, 'id'>)[];
	  }
	| { readonly kind: 'set_title'; readonly title: string }
	| { readonly kind: 'set_about'; readonly about?: string | undefined }
	/** Whether its figures are made up. */
	| { readonly kind: 'set_invented'; readonly invented: boolean }
	/** What another command made, gone back on or done again, whatever it was. */
	| { readonly kind: 'patch'; readonly patch: Patch }
	/** Several as one: all of them or none, in turn. */
	| { readonly kind: 'several'; readonly commands: readonly Command[] };

export type QuantityCommand =
	| {
			readonly kind: 'add_quantity';
			readonly sheet: number;
			readonly index: number;
			readonly quantity: Quantity;
	  }
	| {
			readonly kind: 'replace_quantity';
			/** Its name until now; another name in `quantity` renames it everywhere. */
			readonly name: string;
			readonly quantity: Quantity;
			/** Values that no longer fit are dropped. */
			readonly also?: boolean | undefined;
	  }
	| {
			readonly kind: 'remove_quantity';
			readonly name: string;
			/** Formulas that use it stay, and show the missing name. */
			readonly also?: boolean | undefined;
	  }
	| {
			readonly kind: 'move_quantity';
			readonly name: string;
			readonly sheet: number;
			/** Its place once it has been taken out. */
			readonly index: number;
	  };

export type SheetCommand =
	| { readonly kind: 'add_sheet'; readonly index: number; readonly sheet: Sheet }
	| {
			readonly kind: 'rename_sheet';
			readonly sheet: number;
			readonly title: string;
			/** Left out: as they are. Null: none. */
			readonly note?: string | null | undefined;
			readonly headline?: string | null | undefined;
	  }
	| { readonly kind: 'remove_sheet'; readonly sheet: number; readonly also?: boolean | undefined }
	| { readonly kind: 'move_sheet'; readonly sheet: number; readonly index: number };

export type SetCommand =
	| { readonly kind: 'add_set'; readonly index: number; readonly set: SetDefinition }
	| {
			readonly kind: 'describe_set';
			readonly set: string;
			readonly label: string;
			/** Left out: none. */
			readonly plural?: string | undefined;
			readonly note?: string | undefined;
			readonly number_unit?: string | undefined;
			/** Whether its members are months, one after the other; left out: as it is. */
			readonly time?: 'month' | null;
	  }
	/** Refused while anything needs it. */
	| { readonly kind: 'remove_set'; readonly set: string };

export type MemberCommand =
	| {
			readonly kind: 'add_member';
			readonly set: string;
			readonly index: number;
			readonly member: Member;
			/** Values, pairs, formulas and colours are those of this member. */
			readonly like?: string | undefined;
	  }
	| {
			readonly kind: 'remove_member';
			readonly set: string;
			readonly id: string;
			readonly also?: boolean | undefined;
	  }
	| {
			readonly kind: 'replace_member';
			readonly set: string;
			/** Its id until now; another id in `member` renames it everywhere. */
			readonly id: string;
			readonly member: Member;
	  }
	| {
			readonly kind: 'move_member';
			readonly set: string;
			readonly id: string;
			readonly index: number;
	  }
	| {
			readonly kind: 'set_relation_pair';
			readonly relation: string;
			readonly pair: readonly string[];
			/** False drops the values entered for the pair. */
			readonly exists: boolean;
	  };

export type ScenarioCommand =
	| { readonly kind: 'add_scenario'; readonly scenario: Scenario; readonly index: number }
	| {
			readonly kind: 'replace_scenario';
			readonly id: string;
			readonly scenario: ScenarioHeader;
	  }
	| { readonly kind: 'remove_scenario'; readonly id: string }
	| { readonly kind: 'move_scenario'; readonly id: string; readonly index: number }
	/**
	 * Its values become the base's. Those named in `hold` keep their figures: what they take from the base is written in,
	 * and where they are compared with the base, they are compared with `against` from then on.
	 */
	| {
			readonly kind: 'promote_scenario';
			readonly id: string;
			readonly hold?: readonly string[] | undefined;
			readonly against?: string | undefined;
	  }
	/** What quotes stand on from now on. */
	| { readonly kind: 'quote_on'; readonly id: string };

export type StudyCommand =
	| {
			readonly kind: 'put_study';
			readonly study: Study;
			/** The name of the one that it replaces, be it under another name; left out: one more. */
			readonly name?: string | undefined;
			/** Its place in the list; left out: where it was, or last. */
			readonly index?: number | undefined;
	  }
	| { readonly kind: 'remove_study'; readonly name: string }
	| {
			readonly kind: 'set_ran';
			readonly name: string;
			/** What the run found; left out: it counts as never run. */
			readonly ran?: Ran | undefined;
	  };

export type ProgrammeCommand =
	| {
			readonly kind: 'put_programme';
			readonly programme: Programme;
			/** The name of the one that it replaces; left out: one more. */
			readonly name?: string | undefined;
	  }
	| { readonly kind: 'remove_programme'; readonly name: string }
	/** What was found; without values: there is no plan any more. */
	| {
			readonly kind: 'set_plans';
			readonly plans: readonly (
				ProgrammePlan | { readonly programme: string; readonly scenario: string }
			)[];
	  };

export type TableCommand =
	| {
			readonly kind: 'put_table';
			readonly table: KeptTable;
			/** The title of the one that it replaces, be it under another title; left out: one more. */
			readonly title?: string | undefined;
	  }
	| { readonly kind: 'remove_table'; readonly title: string };

export type CalibrationCommand =
	| {
			readonly kind: 'put_calibration';
			readonly calibration: Calibration;
			/** The name of the one that it replaces; left out: one more. */
			readonly name?: string | undefined;
	  }
	| { readonly kind: 'remove_calibration'; readonly name: string };

export type FrozenCommand =
	| { readonly kind: 'add_frozen'; readonly frozen: Frozen }
	| {
			readonly kind: 'describe_frozen';
			readonly id: string;
			readonly title: string;
			/** Left out: none. */
			readonly note?: string | undefined;
	  }
	| {
			readonly kind: 'remove_frozen';
			readonly id: string;
			/** Formulas that read it stay, and show the missing name. */
			readonly also?: boolean | undefined;
	  };

export type QuoteCommand =
	/** One more, or in place of the one of that id. */
	| { readonly kind: 'put_quote'; readonly quote: KeptQuote }
	| { readonly kind: 'remove_quote'; readonly id: string }
	| { readonly kind: 'set_letterhead'; readonly letterhead: Letterhead };

export interface CommandProblem {
	/** What to decide on: 'in-use' and 'drops-values' can be answered with `also: true`. */
	readonly code: string;
	/** What cannot be done, why, and what to do: one line for the screen. */
	readonly message: string;
}

/** What a command makes of a workbook, before it is checked. */
export type Edit =
	| { readonly ok: true; readonly workbook: Workbook }
	| { readonly ok: false; readonly problem: CommandProblem };

export const refused = (code: string, message: string): { ok: false; problem: CommandProblem } => ({
	ok: false,
	problem: { code, message }
});

export const edited = (workbook: Workbook): Edit => ({ ok: true, workbook });
