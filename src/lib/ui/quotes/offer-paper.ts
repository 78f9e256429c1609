/** An offer as a page of its own and as text to copy. The page is a whole document: nothing of the app is in it. */
import type { Offer } from './offer';
import { offerTexts as texts } from './offer-texts';
import { language } from '../language';

const SIGNS: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&#39;'
};
const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => SIGNS[sign]!);
const lines = (text: string): string => safe(text.trim()).replace(/\r?\n/g, '<br>');
const p = (text: string | undefined, of = ''): string =>
	text?.trim() ? `<p${of ? ` class="${of}"` : ''}>${lines(text)}</p>` : '';

/** Of paper, whatever the reader's screen: dark on white. */
export const OFFER_STYLE = `
@page { size: A4; margin: 18mm 16mm; }
:root { color-scheme: light; }
body { margin: 0 auto; padding: 24px; max-width: 178mm; background: #fff; color: #1b1d1f; font: 10.5pt/1.45 system-ui, sans-serif; }
@media print { body { padding: 0; } }
header { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 12px 32px; border-bottom: 1.5px solid #1b1d1f; padding-bottom: 10px; }
header strong { font-size: 14pt; }
header p, address { margin: 0; font-style: normal; }
.address { margin: 28px 0 24px; }
h1 { font-size: 16pt; margin: 0 0 10px; }
h2 { font-size: 11pt; margin: 18px 0 4px; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: 2px 16px; margin: 0 0 14px; }
dt { color: #55595e; }
dd { margin: 0; }
table { border-collapse: collapse; width: 100%; margin: 12px 0 4px; font-variant-numeric: tabular-nums; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { text-align: right; padding: 5px 6px; border-bottom: 1px solid #c9cdd2; vertical-align: bottom; }
th:first-child, td:first-child { text-align: left; padding-left: 0; min-width: 38mm; }
th { font-weight: 600; font-size: 9pt; }
tfoot td { font-weight: 700; border-bottom: 1.5px solid #1b1d1f; }
.small { font-size: 9pt; color: #55595e; }
.draft { border: 1.5px solid #1b1d1f; padding: 4px 10px; font-weight: 700; display: inline-block; margin: 0 0 10px; }
footer { margin-top: 28px; border-top: 1px solid #c9cdd2; padding-top: 6px; }
@media (max-width: 560px) { body { padding: 14px; } table, thead, tbody, tfoot, tr, th, td { display: block; } thead { display: none; } td { text-align: left; padding: 2px 0; border: 0; } td::before { content: attr(data-title) ": "; color: #55595e; } td:first-child { font-weight: 600; padding-top: 8px; } td:first-child::before { content: none; } }
@media print { table { display: table; } thead { display: table-header-group; } tbody { display: table-row-group; } tfoot { display: table-footer-group; } tr { display: table-row; } th, td { display: table-cell; } td::before { content: none !important; } }
`;

/** Without its style where the reader gives it one: a page of the app takes none from a text. */
export function offerPage(offer: Offer, withStyle = true): string {
	const { letterhead, facts, columns, rows, total, terms, says, clause, cautions } = offer;
	const pairs = (list: readonly (readonly [string, string])[]) =>
		`<dl>${list.map(([title, text]) => `<dt>${safe(title)}</dt><dd>${lines(text)}</dd>`).join('')}</dl>`;
	const head = columns.map((title) => `<th scope="col">${safe(title)}</th>`).join('');
	const body = rows
		.map(
			(row) =>
				`<tr>${row.map((cell, i) => `<td data-title="${safe(columns[i] ?? '')}">${safe(cell)}</td>`).join('')}</tr>`
		)
		.join('');
	const foot =
		total === null
			? ''
			: `<tfoot><tr><td colspan="${columns.length - 1}">${safe(texts.total)}</td><td>${safe(total)}</td></tr></tfoot>`;
	return [
		`<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${safe(offer.title)}</title>${withStyle ? `<style>${OFFER_STYLE}</style>` : ''}</head><body>`,
		`<header><div>${letterhead.name ? `<strong>${safe(letterhead.name)}</strong>` : ''}${p(letterhead.address)}</div>${p(letterhead.contact)}</header>`,
		`<main><address class="address">${lines(offer.to)}</address>`,
		offer.isDraft ? `<p class="draft">${safe(texts.draft)}</p>` : '',
		`<h1>${safe(offer.title)}</h1>`,
		pairs(facts),
		p(letterhead.opening),
		`<table><thead><tr>${head}</tr></thead><tbody>${body}</tbody>${foot}</table>`,
		p(texts.rounding, 'small'),
		terms.length + says.length > 0 ? `<h2>${safe(texts.terms)}</h2>` : '',
		terms.length > 0 ? pairs(terms) : '',
		...says.map((text) => p(text)),
		clause
			? `<h2>${safe(texts.clause)}</h2>${p(clause.text)}${clause.shares.length > 0 ? p(texts.shares(clause.shares.join(', '))) : ''}`
			: '',
		cautions.length > 0
			? `<h2>${safe(texts.toKnow)}</h2><ul>${cautions.map((text) => `<li>${safe(text)}</li>`).join('')}</ul>`
			: '',
		p(letterhead.closing),
		`</main>${letterhead.foot ? `<footer class="small">${p(letterhead.foot)}</footer>` : ''}</body></html>`
	].join('\n');
}

/** The same to copy into a mail. */
export function offerText(offer: Offer): string {
	const { letterhead, columns, rows, total, terms, says, clause, cautions } = offer;
	const pair = ([title, text]: readonly [string, string]) => `${title}: ${text}`;
	const blocks = [
		[letterhead.name, letterhead.address, letterhead.contact],
		[offer.to],
		[offer.isDraft ? texts.draft : '', offer.title, ...offer.facts.slice(1).map(pair)],
		[letterhead.opening],
		...rows.map((row) => [
			row[0],
			...row.slice(1).map((cell, i) => (cell ? `  ${columns[i + 1]}: ${cell}` : ''))
		]),
		[total === null ? '' : `${texts.total}: ${total}`, texts.rounding],
		terms.length + says.length > 0 ? [`${texts.terms}:`, ...terms.map(pair), ...says] : [],
		clause
			? [
					`${texts.clause}: ${clause.text}`,
					clause.shares.length > 0 ? texts.shares(clause.shares.join(', ')) : ''
				]
			: [],
		cautions.length > 0 ? [`${texts.toKnow}:`, ...cautions.map((text) => `- ${text}`)] : [],
		[letterhead.closing],
		[letterhead.foot]
	];
	return blocks
		.map((block) => block.filter((line) => line?.trim()).join('\n'))
		.filter(Boolean)
		.join('\n\n')
		.replaceAll('\u00a0', ' ');
}
