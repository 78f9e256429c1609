/** A paper of a stored revision as PDF, made where values are computed: within the same limits of time and memory. */
import type { Model } from '$lib/engine/model';
import { paperOf, wanted } from '$lib/papers/of-model';
import { paperPdf } from '$lib/papers/pdf/pdf';
import type { Format } from '$lib/papers/pdf/sheets';
import { readFontFiles } from '../papers/font-files';
import { plansFor } from './plans';

export interface PaperAsk {
	readonly name: string;
	readonly scenarios?: readonly string[] | undefined;
	readonly format: Format;
	readonly author?: string | undefined;
	readonly question?: string | undefined;
	readonly revision: number;
	/** Milliseconds since 1970. */
	readonly made: number;
}

export type PaperAnswered =
	| { readonly kind: 'paper'; readonly title: string; readonly bytes: Uint8Array<ArrayBuffer> }
	| { readonly kind: 'no_paper'; readonly message: string };

const STALE = 'A plan that these figures rest on does not answer the workbook as it is.';

export async function paperAnswer(
	model: Model,
	ask: PaperAsk,
	seconds: number
): Promise<PaperAnswered> {
	const paper = wanted(model, ask.name, ask.scenarios);
	if (!paper.ok) return { kind: 'no_paper', message: paper.message };
	const plans = await plansFor(model, paper.scenarios, seconds);
	const isBehind = [...plans.values()].some((states) =>
		states.some(({ plan }) => plan === 'stale' || plan === 'none')
	);
	const made = new Date(ask.made);
	const result = paperOf(model, paper, {
		...{ date: made.toISOString().slice(0, 10), locale: 'en', revision: ask.revision },
		...(isBehind && { behind: STALE }),
		said: {
			...(ask.author !== undefined && { author: ask.author }),
			...(ask.question !== undefined && { question: ask.question })
		}
	});
	if (!result.ok) return { kind: 'no_paper', message: result.message };
	const { bytes } = await paperPdf(result.paper, {
		...{ fonts: readFontFiles(), format: ask.format, made }
	});
	return { kind: 'paper', title: result.paper.title, bytes };
}
