/**
 * An offer as a paper: what `ui/quotes/offer.ts` lets out and nothing else. The file's properties hold its title alone, as
 * who made it and from what is ours.
 */
import { language } from '$lib/ui/language';
import type { Offer } from '$lib/ui/quotes/offer';
import { offerTexts as texts } from '$lib/ui/quotes/offer-texts';
import { heading, list, paragraph, type Block, type Paper, type Row } from './paper';

export function offerPaper(offer: Offer): Paper {
	const { letterhead, columns, rows, total, terms, says, clause, cautions } = offer;
	const said = (text: string | undefined, weight?: 'small'): Block[] =>
		text?.trim() ? [paragraph(text.trim(), weight)] : [];
	const pair = ([title, text]: readonly [string, string]) => `${title}: ${text}`;
	const sum: Row[] =
		total === null
			? []
			: [
					{
						kind: 'total',
						cells: columns.map((_, i) =>
							i === 0 ? texts.total : i === columns.length - 1 ? total : ''
						)
					}
				];
	const blocks: Block[] = [
		...(letterhead.name ? [paragraph(letterhead.name, 'strong')] : []),
		...said(letterhead.address, 'small'),
		...said(letterhead.contact, 'small'),
		...said(offer.to),
		...(offer.isDraft ? [paragraph(texts.draft, 'caution')] : []),
		list(offer.facts.map(pair)),
		...said(letterhead.opening),
		{
			kind: 'table',
			caption: texts.items,
			columns: columns.map((title, i) => ({ title, isNumber: i > 0 })),
			rows: [...rows.map((cells) => ({ cells })), ...sum],
			note: texts.rounding
		},
		...(terms.length + says.length > 0 ? [heading(texts.terms)] : []),
		...(terms.length > 0 ? [list(terms.map(pair))] : []),
		...says.map((text) => paragraph(text)),
		...(clause ? [heading(texts.clause), paragraph(clause.text)] : []),
		...(clause && clause.shares.length > 0
			? [paragraph(texts.shares(clause.shares.join(', ')))]
			: []),
		...(cautions.length > 0 ? [heading(texts.toKnow), list(cautions)] : []),
		...said(letterhead.closing)
	];
	return {
		...{ title: offer.title, language, blocks },
		foot: [letterhead.foot?.replace(/\s+/g, ' ').trim(), offer.title].filter(Boolean).join(', ')
	};
}
