/** What the net present value of each case is made of, and further figures of it, as columns. */
import type { Layout } from '$lib/engine/layout';
import { decimalsFor, formatDifference, formatUnit } from '../../format';
import type { PaybackPicture } from './payback';
import { read, shown, type Reading, type Source } from '../../figure/read';
import type { Scale } from '../../figure/scale';

export interface PartColumn {
	readonly label: string;
	readonly unit: string;
	/** Money is shown on the picture's scale and with its sign. */
	readonly isMoney: boolean;
	readonly of: (source: Source) => Reading;
}

export function partColumns(layout: Layout, picture: PaybackPicture, scale: Scale): PartColumn[] {
	const { parts, more = [] } = picture;
	const set = parts === undefined ? undefined : layout.byName.get(parts)?.axes[0]?.set;
	const members = set === undefined ? [] : (layout.sets.get(set)?.members ?? []);
	return [
		...members.map(({ id, label = id }, at) => ({
			...{ label, unit: scale.unit, isMoney: true },
			of: (source: Source) => read(source, parts ?? '', { [set ?? '']: at })
		})),
		...more.map((name) => {
			const quantity = layout.byName.get(name)?.quantity;
			return {
				...{ label: quantity?.label ?? name, unit: formatUnit(quantity?.unit), isMoney: false },
				of: (source: Source) => read(source, name)
			};
		})
	];
}

export function partText(column: PartColumn, source: Source, scale: Scale, locale: string): string {
	const reading = column.of(source);
	if (reading.kind !== 'value')
		return reading.kind === 'absent' ? 'none' : shown(reading, 0, locale);
	if (!column.isMoney)
		return shown(
			reading,
			decimalsFor(reading.value, reading.quantity?.quantity.digits ?? 4),
			locale
		);
	const value = reading.value * scale.factor;
	return formatDifference(value, scale.factor === 1 ? decimalsFor(value, 4) : 0, locale);
}

/** Whether the picture names any of them. */
export const hasParts = ({ parts, more = [] }: PaybackPicture) =>
	parts !== undefined || more.length > 0;
