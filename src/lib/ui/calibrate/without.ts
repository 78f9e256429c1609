/** A fit without a point, or without all that came in together. */
import type { KnownPoint } from '$lib/calibration/members';
import type { Calibration } from '$lib/workbook/calibration-schema';

type Data = NonNullable<Calibration['data']>;

export const withoutBatch = (calibration: Calibration, batch: number): Calibration =>
	withData(
		calibration,
		(calibration.data ?? []).filter((_, at) => at !== batch)
	);

export const withoutPoint = (
	calibration: Calibration,
	{ batch, place }: Pick<KnownPoint, 'batch' | 'place'>
): Calibration =>
	withData(
		calibration,
		(calibration.data ?? []).flatMap((one, at) => {
			if (at !== batch) return [one];
			const points = one.points.filter((_, i) => i !== place);
			return points.length > 0 ? [{ ...one, points }] : [];
		})
	);

function withData({ data: _data, ...rest }: Calibration, data: Data): Calibration {
	return data.length > 0 ? { ...rest, data } : rest;
}
