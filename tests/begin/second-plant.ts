/** An invented second plant, as its people have it: lists in three national formats, a ledger, a log, and what they know. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const path = (name: string) => fileURLToPath(new URL(`plant/${name}`, import.meta.url));

/** Semicolons, decimal comma, Windows-1252; tabs in UTF-16; commas in quotes with points. */
export const FILES = {
	items: path('items.csv'),
	machines: path('machines.txt'),
	ledger: path('ledger.csv'),
	log: path('log.csv')
} as const;

/** Twelve months of the production log, summed as somebody would with a pencil. */
export function yearOfLog(): Record<'metres' | 'dosed' | 'electricity' | 'hours', number> {
	const [, ...rows] = readFileSync(path('log.csv'), 'utf8').trim().split('\n');
	const sum = (column: number) => rows.reduce((so, row) => so + Number(row.split(';')[column]), 0);
	return { metres: sum(1), dosed: sum(2), electricity: sum(3), hours: sum(4) };
}

/** By the label of the quantity, in the order of its members. */
export const KNOWN: Readonly<Record<string, readonly number[]>> = {
	Overheads: [212_000, 96_000, 118_000, 141_000, 38_000, 31_000, 62_000, 88_000],
	'Positions a shift': [1, 1, 2, 1, 1, 1],
	Wage: [23.6, 19.4, 17.2, 17.9, 21.8, 24.1],
	'On-costs': [23],
	'Contract hours': [2050],
	'Resin or compound price': [2.11, 3.35, 1.98, 3.7, 7.35],
	'Electricity price by tariff band': [0.205, 0.171, 0.124, 0.118],
	'Demand charge': [8.7],
	'Base load of the site': [61]
};
