/**
 * The strip of the first screen: its figures with their captions and explanations, in words.
 */
import { quotesStandOn } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Layout } from '$lib/engine/layout';
import type { Agreement, Results } from '$lib/engine/results';
import { fill, figureOf, type Figure, type FigureOf } from './show';

export interface Fact {
	readonly figure: Figure;
	readonly title: string;
	readonly below: string;
	/** Words beside the figure: its unit, or what the workbook says instead. */
	readonly beside: string;
	readonly scenario: string;
	/** Whether its figure depends on the subject, so that the chooser stands with it. */
	readonly bySubject: boolean;
	readonly selectedScenario: boolean;
}

export interface FrontInput {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly results: ReadonlyMap<string, Results>;
	readonly base: string;
	readonly selectedScenario: string;
	readonly subject: string | null;
	readonly locale: string;
	/** The starting view, whose facts stand in place of the front's. */
	readonly start: string | null;
	/** Whose error a quantity carries in a scenario. */
	readonly errorOf: (scenario: string, quantity: string) => string | undefined;
}

/** The facts of the strip: those of the starting view where it has its own. */
export function factsOf({ front, starts }: Workbook, start: string | null) {
	return starts?.find(({ id }) => id === start)?.facts ?? front?.facts ?? [];
}

export function frontFacts(input: FrontInput): Fact[] {
	const { workbook, layout, results, subject, locale } = input;
	return factsOf(workbook, input.start).map((fact) => {
		const selectedScenario = fact.of === 'in_hand';
		const scenario = selectedScenario
			? input.selectedScenario
			: fact.of === 'quotes'
				? quotesStandOn(workbook)
				: input.base;
		const of: FigureOf = { layout, results: results.get(scenario), subject, locale };
		const figure = figureOf(of, fact.quantity);
		const axes = layout.byName.get(fact.quantity)?.axes ?? [];
		const bySubject = axes.some((axis) => axis.set === workbook.front?.subject);
		const cause = input.errorOf(scenario, fact.quantity);
		let below = fact.below ? fill(of, fact.below) : '';
		// Of a scenario that has just been made there is nothing to tell yet.
		if (figure.state === 'pending' && layout.byName.has(fact.quantity)) below = 'being computed';
		if (figure.state === 'nothing') below = fact.without ? fill(of, fact.without) : below;
		if (figure.state === 'error')
			below = cause
				? `inherits the error of ${cause.toLowerCase()}`
				: 'its error is explained below';
		const beside =
			figure.state === 'value' ? (fact.beside ? fill(of, fact.beside) : figure.unit) : '';
		const words = fill(of, fact.title);
		const named = bySubject && subject !== null && !words.includes(subject);
		const title = named ? `${subject}, ${words[0]?.toLowerCase() ?? ''}${words.slice(1)}` : words;
		return { figure, title, below, beside, scenario, bySubject, selectedScenario };
	});
}

/** "4,877 of 4,877 values agree, computed twice". */
export function agreementWords(
	agreement: Agreement | null,
	settled: boolean,
	locale: string,
	showsShipped = false
): string {
	if (showsShipped) return 'from the shipped copy, being computed';
	if (!agreement) return settled ? 'second engine is starting' : 'being computed';
	const show = (value: number) => new Intl.NumberFormat(locale).format(value);
	const busy = agreement.busy || !settled;
	if (agreement.compared === 0) {
		if (!busy) return '';
		const { done } = agreement;
		if (done === undefined) return 'check running';
		return `checking: ${show(Math.floor(100 * done))} %`;
	}
	const words = `${show(agreement.agreeing)} of ${show(agreement.compared)} values agree, computed twice`;
	const sample = agreement.sample ? `, a sample of ${show(agreement.sample.of)}` : '';
	return `${words}${sample}${busy ? ', checking the last edit' : ''}`;
}
