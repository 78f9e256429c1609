/** Keeping fits and the points that they stand on. Nothing that is computed changes. */
import { calibrationSchema, type Calibration } from '../calibration-schema';
import type { Workbook } from '../schema';
import { refused, type CalibrationCommand, type Edit } from './command';
import { inserted, mapped, without } from './lists';
import { withList } from './parts';
import { shapeRefusal } from './refusal';

export function editCalibration(workbook: Workbook, command: CalibrationCommand): Edit {
	const all = workbook.calibrations ?? [];
	const { name } = command;
	const place = name === undefined ? -1 : all.findIndex((one) => one.name === name);
	if (name !== undefined && place < 0)
		return refused(
			'unknown-calibration',
			`There is no fit "${name}". Choose one of the workbook's.`
		);
	if (command.kind === 'remove_calibration')
		return withList(workbook, 'calibrations', without(all, place));
	const { calibration } = command;
	const bad = shapeRefusal(calibrationSchema, calibration, 'The fit');
	if (bad) return bad;
	const twin = all.findIndex((other) => other.name === calibration.name);
	if (twin >= 0 && twin !== place)
		return refused(
			'duplicate-calibration',
			`There is already a fit named ${calibration.name}. Choose another name.`
		);
	const others = place < 0 ? all : without(all, place);
	return withList(
		workbook,
		'calibrations',
		inserted(others, place < 0 ? all.length : place, calibration)
	);
}

interface Renames {
	readonly quantity?: (name: string) => string;
	readonly member?: (set: string, id: string) => string;
}

/** The workbook with what its fits name under new names. */
export function mapCalibrationNames(workbook: Workbook, renames: Renames): Workbook {
	if (!workbook.calibrations) return workbook;
	const calibrations = mapped(workbook.calibrations, (one) => {
		const next = renamed(one, renames);
		return JSON.stringify(next) === JSON.stringify(one) ? one : next;
	});
	return calibrations === workbook.calibrations ? workbook : { ...workbook, calibrations };
}

function renamed(one: Calibration, renames: Renames): Calibration {
	const quantity = (name: string) => renames.quantity?.(name) ?? name;
	const member = (set: string | undefined, id: string) =>
		set === undefined ? id : (renames.member?.(set, id) ?? id);
	return {
		...one,
		...(one.today !== undefined && { today: quantity(one.today) }),
		gives: one.gives.map((given) => ({
			...given,
			...(given.quantity !== undefined && { quantity: quantity(given.quantity) }),
			...(given.at && { at: given.at.map(({ of, id }) => ({ of, id: member(of, id) })) })
		})),
		...(one.data && {
			data: one.data.map((batch) => ({
				...batch,
				points: batch.points.map((point) => ({
					...point,
					...(point.at !== undefined && { at: member(one.each, point.at) }),
					...(point.of !== undefined && { of: member(one.over, point.of) })
				}))
			}))
		})
	};
}
