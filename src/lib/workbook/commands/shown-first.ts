/**
 * What the strip and the starting views keep of a quantity when it is renamed or removed. A view that
 * loses its last figure of a kind goes on without it.
 */
import { templateNames } from '../consistency/front';
import type { Fact, Finding, Start, Workbook } from '../schema';

const FACT_TEXTS = ['title', 'below', 'beside', 'without'] as const;

const factUses = (fact: Fact, names: ReadonlySet<string>): boolean =>
	names.has(fact.quantity) || FACT_TEXTS.some((field) => textUses(fact[field] ?? '', names));
const findingUses = (finding: Finding, names: ReadonlySet<string>): boolean =>
	finding.kind === 'figures' &&
	(finding.quantities.some((name) => names.has(name)) || textUses(finding.title, names));
const textUses = (text: string, names: ReadonlySet<string>): boolean =>
	templateNames(text).some((name) => names.has(name));

/** Who shows one of these quantities first, in words. */
export function firstShownBy(workbook: Workbook, names: ReadonlySet<string>): string[] {
	const users: string[] = [];
	if (workbook.front?.facts.some((fact) => factUses(fact, names))) users.push('the front strip');
	for (const { title, facts, findings } of workbook.starts ?? [])
		if (
			facts?.some((fact) => factUses(fact, names)) ||
			findings.some((finding) => findingUses(finding, names))
		)
			users.push(`the starting view ${title}`);
	return users;
}

/** The workbook whose strip and starting views call a quantity by its new name. */
export function renamedInFirst(workbook: Workbook, from: string, to: string): Workbook {
	const name = (old: string) => (old === from ? to : old);
	const text = (old: string) =>
		old.replace(/\{([^{}]*)\}/g, (whole, inside: string) =>
			inside.trim() === from ? `{${to}}` : whole
		);
	const fact = (old: Fact): Fact => ({
		...old,
		quantity: name(old.quantity),
		title: text(old.title),
		...(old.below === undefined ? {} : { below: text(old.below) }),
		...(old.beside === undefined ? {} : { beside: text(old.beside) }),
		...(old.without === undefined ? {} : { without: text(old.without) })
	});
	const finding = (old: Finding): Finding =>
		old.kind === 'figures'
			? { ...old, title: text(old.title), quantities: old.quantities.map(name) }
			: old;
	return changed(workbook, new Set([from]), {
		facts: (facts) => facts.map(fact),
		findings: (findings) => findings.map(finding)
	});
}

/** The workbook whose strip and starting views show nothing of quantities that are gone. */
export function withoutInFirst(workbook: Workbook, gone: ReadonlySet<string>): Workbook {
	const kinds = new Set((workbook.pictures ?? []).map(({ kind }) => kind as string));
	const finding = (old: Finding): Finding[] => {
		if (old.kind === 'picture') return kinds.has(old.picture) ? [old] : [];
		const quantities = old.quantities.filter((name) => !gone.has(name));
		return quantities.length === 0 || textUses(old.title, gone) ? [] : [{ ...old, quantities }];
	};
	return changed(workbook, gone, {
		facts: (facts) => facts.filter((fact) => !factUses(fact, gone)),
		findings: (findings) => findings.flatMap(finding)
	});
}

interface Change {
	readonly facts: (facts: readonly Fact[]) => Fact[];
	readonly findings: (findings: readonly Finding[]) => Finding[];
}

/** Parts that show none of these quantities, and no picture that is gone, stay the same objects. */
function changed(workbook: Workbook, names: ReadonlySet<string>, change: Change): Workbook {
	const kinds = new Set((workbook.pictures ?? []).map(({ kind }) => kind as string));
	const touches = (finding: Finding) =>
		findingUses(finding, names) || (finding.kind === 'picture' && !kinds.has(finding.picture));
	const anew = (start: Start): Start => {
		const facts = start.facts?.some((fact) => factUses(fact, names));
		if (!facts && !start.findings.some(touches)) return start;
		return {
			...start,
			...(start.facts && { facts: change.facts(start.facts) }),
			findings: change.findings(start.findings)
		};
	};
	const { front, starts } = workbook;
	const inFront = front?.facts.some((fact) => factUses(fact, names));
	const next = starts?.map(anew);
	return {
		...workbook,
		...(front && inFront && { front: { ...front, facts: change.facts(front.facts) } }),
		...(next && next.some((start, i) => start !== starts?.[i]) && { starts: next })
	};
}
