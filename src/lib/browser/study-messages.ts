/**
 * What the page and the workers of studies say to each other. Plain data only. A run is one study at work; a worker
 * may hold several. The lead of a run puts its figures together and then checks its first draw; all compute draws.
 */
import { refuse, type Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';

/** Strata of correlated inputs, by the input's place. */
export type Strata = readonly (readonly [input: number, strata: Uint32Array])[];

export interface RunSettings {
	readonly draws?: number | undefined;
	readonly seed?: number | undefined;
}

/** What a study is run on: the workbook, or whatever hands it over with its plan, so that none is made again. */
export type StudySource = { readonly workbook: Workbook } | { readonly port: MessagePort };

export type ToStudyWorker =
	/** A study that is no spread of draws: answered by `early` and `finished`. */
	| {
			readonly kind: 'run';
			readonly run: number;
			readonly source: StudySource;
			readonly study: Study;
	  }
	/** A risk study: answered by `opened`. */
	| {
			readonly kind: 'open';
			readonly run: number;
			readonly source: StudySource;
			readonly study: Study;
			readonly settings: RunSettings;
			readonly isLead: boolean;
	  }
	/** Answered by `part`. */
	| {
			readonly kind: 'draw';
			readonly run: number;
			readonly from: number;
			readonly count: number;
			/** Of these draws. */
			readonly strata: Strata;
	  }
	/** To the lead, with the results of all draws: answered by `early` and `finished`. */
	| {
			readonly kind: 'finish';
			readonly run: number;
			readonly values: readonly Float64Array[];
			readonly states: readonly Uint8Array[];
	  }
	/** Nobody waits for this run any more. */
	| { readonly kind: 'close'; readonly run: number };

/** Said once to every worker; nothing is fetched from there before a study's plans follow. */
export interface WhereSolverLies {
	readonly kind: 'solver';
	readonly wasmUrl: string;
}

export type FromStudyWorker =
	| {
			readonly kind: 'opened';
			readonly run: number;
			readonly answer: Answer<{
				readonly draws: number;
				readonly results: number;
				/** Of all draws; from the lead alone. */
				readonly strata: Strata;
			}>;
	  }
	| {
			readonly kind: 'part';
			readonly run: number;
			readonly from: number;
			readonly values: readonly Float64Array[];
			readonly states: readonly Uint8Array[];
	  }
	/** Points of a study that is no spread of draws, where each is planned anew. */
	| { readonly kind: 'progress'; readonly run: number; readonly done: number; readonly of: number }
	/** The answer before the second engine has looked at it. */
	| { readonly kind: 'early'; readonly run: number; readonly result: StudyResult }
	| { readonly kind: 'finished'; readonly run: number; readonly answer: Answer<StudyResult> }
	/** It failed in a way that nobody foresaw. */
	| { readonly kind: 'failed'; readonly run: number; readonly why: string };

/** What may be handed over instead of copied. */
export function transfersOf(
	message: FromStudyWorker | ToStudyWorker
): (ArrayBufferLike | MessagePort)[] {
	switch (message.kind) {
		case 'run':
		case 'open':
			return 'port' in message.source ? [message.source.port] : [];
		case 'part':
		case 'finish':
			return [...message.values, ...message.states].map(({ buffer }) => buffer);
		case 'draw':
			return message.strata.map(([, { buffer }]) => buffer);
		case 'opened':
			return message.answer.ok ? message.answer.value.strata.map(([, { buffer }]) => buffer) : [];
		default:
			return [];
	}
}

export interface StudyProgress {
	readonly phase: 'preparing' | 'drawing' | 'finishing' | 'checking';
	/** Draws, or points that are planned anew; 0 of 0 for a study that has neither. */
	readonly done: number;
	readonly of: number;
}

export const stopped = (why: string) =>
	refuse('stopped', `The study stopped (${why}). Run it again; the workbook is untouched.`);
