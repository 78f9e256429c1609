/**
 * What is written beside and below a cross-section: labels, the table of layers, and the summary.
 */
import type { PlainTable } from '$lib/exchange/csv/write';
import { decimalsFor, formatDifference, formatNumber, formatUnit } from '../../format';
import type { Dimensions, SectionTexts } from './section-shapes';
import { plain, shown, sumOf, type Reading } from '../../figure/read';
import type { InHand, Section } from './section';
import { listed, midSentence } from '../../figure/words';

/** Decimals that serve all readings of a column. */
export function decimalsOf(readings: readonly (Reading | undefined)[]): number {
	const values = readings.filter((reading) => reading?.kind === 'value');
	const largest = Math.max(0, ...values.map((value) => Math.abs(value?.value ?? 0)));
	return decimalsFor(largest, 4);
}

/** "with better gauging −0.040"; empty where there is no number to compare. */
export function differenceOf(
	here: Reading | undefined,
	there: Reading | undefined,
	decimals: number,
	locale: string
): string {
	if (here?.kind !== 'value' || there?.kind !== 'value') return '';
	return formatDifference(here.value - there.value, decimals, locale);
}

const unitOf = (reading: Reading | undefined) => formatUnit(reading?.quantity?.quantity.unit);

const labelOf = (reading: Reading) => midSentence(reading.quantity?.quantity.label ?? '');

/** The numbers that the drawing is made from. */
export function dimensionsOf(section: Section): Dimensions {
	const { layers, selectedScenario } = section;
	return {
		outside: section.outside.value,
		layers: layers.map(({ thickness, role }) => ({ thickness: thickness.value, role })),
		minimum: section.minimum.value,
		eccentricity: section.eccentricity.value,
		spread: section.spread.value,
		wall: section.wall.value,
		wallInHand: selectedScenario?.wall.kind === 'value' ? selectedScenario.wall.value : null
	};
}

/** Every text of the drawing. */
export function sectionTexts(section: Section, locale: string): SectionTexts {
	const { wall, layers, mass, cost, giveaway, outside, selectedScenario } = section;
	const decimals = decimalsOf([wall]);
	const text = (reading: Reading) => shown(reading, decimals, locale);
	const unit = unitOf(wall);
	const figure = (reading: Reading | undefined, words: string) =>
		reading?.kind === 'value'
			? [`${shown(reading, decimalsFor(reading.value, 4), locale)} ${unitOf(reading)}${words}`]
			: [];
	const over =
		giveaway?.kind === 'value'
			? [`${formatNumber(giveaway.value, 1, locale)} ${unitOf(giveaway)} ${labelOf(giveaway)}`]
			: [];
	return {
		layers: layers.map(({ name, thickness }) => ({ name, thickness: text(thickness) })),
		outside: [`${formatNumber(outside.value, 1, locale)} ${unit}`, 'outside'],
		facts: [...figure(mass, ''), ...figure(cost, ' of material'), ...over],
		minimum: `${text(section.minimum)} ${labelOf(section.minimum)}`,
		eccentricity: `${text(section.eccentricity)} ${labelOf(section.eccentricity)}`,
		spread: `${text(section.spread)} ${labelOf(section.spread)}`,
		wall: `${text(wall)} ${unit} ${labelOf(wall)}`,
		selectedScenario: selectedScenario ? handText(selectedScenario, wall, decimals, locale) : '',
		length: (length) => `${formatNumber(length, length < 1 ? 1 : 0, locale)} ${unit}`
	};
}

const handText = (selectedScenario: InHand, wall: Reading, decimals: number, locale: string) =>
	`${shown(selectedScenario.wall, decimals, locale)} with ${selectedScenario.title}, ${differenceOf(selectedScenario.wall, wall, decimals, locale)}`;

export interface LayerFigure {
	readonly text: string;
	/** Whose error it carries; empty otherwise. */
	readonly because: string;
	readonly difference: string;
}

export interface LayerRows {
	readonly heads: readonly { readonly label: string; readonly unit: string }[];
	/** The outside first. */
	readonly rows: readonly {
		readonly name: string;
		readonly material: string;
		readonly role: string;
		readonly figures: readonly LayerFigure[];
		/** Pixels. */
		readonly bar: number;
	}[];
	readonly total: readonly LayerFigure[];
	readonly hand: { readonly title: string; readonly figures: readonly LayerFigure[] } | null;
	readonly remark: string;
}

const LONGEST_BAR = 150;

/** The table as shown: each column in as many decimals as its largest value bears. */
export function layerRows(section: Section, locale: string): LayerRows {
	const { layers, wall, mass, cost, selectedScenario } = section;
	const columns = ['thickness', 'mass', 'cost'] as const;
	const decimals = {
		thickness: decimalsOf([wall]),
		mass: decimalsOf([mass, ...layers.map((layer) => layer.mass)]),
		cost: decimalsOf([cost, ...layers.map((layer) => layer.cost)])
	};
	const figure = (
		reading: Reading | undefined,
		column: (typeof columns)[number],
		from?: Reading
	) => ({
		text: reading ? shown(reading, decimals[column], locale) : '',
		because: reading?.because ?? '',
		difference: differenceOf(reading, from, decimals[column], locale)
	});
	const most = Math.max(
		0,
		...layers.map(({ cost: own }) => (own.kind === 'value' ? own.value : 0))
	);
	return {
		heads: [
			{ label: 'Thickness', unit: unitOf(wall) },
			{ label: 'Mass', unit: unitOf(mass) },
			{ label: 'Material', unit: unitOf(cost) }
		],
		rows: layers
			.map((layer) => ({
				...{ name: layer.name, material: layer.material, role: layer.role },
				figures: columns.map((column) => figure(layer[column], column)),
				bar:
					layer.cost.kind === 'value' && most > 0
						? Math.max(3, (LONGEST_BAR * layer.cost.value) / most)
						: 0
			}))
			.reverse(),
		total: [figure(wall, 'thickness'), figure(mass, 'mass'), figure(cost, 'cost')],
		hand: selectedScenario && {
			title: selectedScenario.title,
			figures: [
				figure(selectedScenario.wall, 'thickness', wall),
				figure(selectedScenario.mass, 'mass', mass),
				figure(selectedScenario.cost, 'cost', cost)
			]
		},
		remark: remarkOf(section)
	};
}

/** What stands out: a role whose share of the money is far above its share of the mass. */
export function remarkOf(section: Section): string {
	const { mass, cost, layers } = section;
	if (mass?.kind !== 'value' || cost?.kind !== 'value') return '';
	const shares = [...new Set(layers.map((layer) => layer.role))].map((role) => {
		const own = layers.filter((layer) => layer.role === role);
		const of = (part: 'mass' | 'cost', whole: number) =>
			(100 * (sumOf(own.map((layer) => layer[part]))?.value ?? 0)) / whole;
		return { role, mass: of('mass', mass.value), cost: of('cost', cost.value) };
	});
	const far = shares.sort((a, b) => b.cost - b.mass - (a.cost - a.mass))[0];
	if (!far || far.role === 'other' || !(far.cost - far.mass >= 5)) return '';
	return `the ${far.role} is ${far.mass.toFixed(0)} % of the mass and ${far.cost.toFixed(0)} % of the money`;
}

/** Columns as the table shows them, from the outside in. */
export function sectionTable(section: Section): PlainTable {
	const first = section.layers[0];
	const head = (label: string, reading: Reading | undefined) => {
		const unit = unitOf(reading);
		return unit ? `${label}, ${unit}` : label;
	};
	const rows = section.layers
		.map((layer) => [
			layer.name,
			layer.material,
			plain(layer.thickness),
			plain(layer.mass),
			plain(layer.cost)
		])
		.reverse();
	const total = (name: string, of: Pick<InHand, 'wall' | 'mass' | 'cost'>) => [
		name,
		'',
		plain(of.wall),
		of.mass ? plain(of.mass) : null,
		of.cost ? plain(of.cost) : null
	];
	return {
		caption: section.title,
		columns: [
			'Layer, outside in',
			'Material',
			head('Thickness', first?.thickness),
			head('Mass', first?.mass),
			head('Material cost', first?.cost)
		],
		rows: [
			...rows,
			total('Wall', section),
			...(section.selectedScenario
				? [total(`Wall in ${section.selectedScenario.title}`, section.selectedScenario)]
				: [])
		]
	};
}

/** The picture for somebody who cannot see it. */
export function sectionSummary(section: Section, locale: string): string {
	if (section.missing)
		return `${section.title} cannot be drawn: ${section.missing.because || 'a value is missing'}.`;
	const { wall, minimum, eccentricity, spread, outside, layers, selectedScenario } = section;
	const decimals = decimalsOf([wall]);
	const text = (reading: Reading) => shown(reading, decimals, locale);
	const unit = unitOf(wall);
	const parts = layers.map((layer) => `${layer.name} ${text(layer.thickness)} ${unit}`).reverse();
	const chain = [minimum, eccentricity, spread]
		.map((reading) => `${text(reading)} ${midSentence(reading.quantity?.quantity.label ?? '')}`)
		.join(' plus ');
	const hand = selectedScenario
		? ` With ${selectedScenario.title}, the wall is ${text(selectedScenario.wall)} ${unit}.`
		: '';
	return (
		`${section.title}: outside diameter ${shown(outside, 1, locale)} ${unit}, wall ${text(wall)} ${unit}, ` +
		`which is ${chain}. From the outside in: ${listed(parts)}.${hand}`
	);
}
