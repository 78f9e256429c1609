/** The fits that a declared one comes to: one, or one for each member of its set, with the points of each. */
import { findSet } from '$lib/workbook/lookup';
import type { Calibration, Point } from '$lib/workbook/calibration-schema';
import type { Workbook } from '$lib/workbook/schema';
import { fitted, type Fit } from './fit';
import { fittedShares, type Share } from './shares';

/** A point with the batch that it came in. */
export interface KnownPoint extends Point {
	readonly batch: number;
	/** Its place in the batch. */
	readonly place: number;
}

export interface MemberFit {
	/** Null where the fit is one for all. */
	readonly member: string | null;
	readonly points: readonly KnownPoint[];
	readonly fit: Fit | null;
	/** Of shares. */
	readonly shares: readonly Share[] | null;
	/** Why there is none; empty where there is one. */
	readonly message: string;
}

export interface Fitting {
	readonly fits: readonly MemberFit[];
	/** Points of members that the workbook has no more. */
	readonly strays: readonly KnownPoint[];
}

export function pointsOf({ data = [] }: Calibration): KnownPoint[] {
	return data.flatMap(({ points }, batch) =>
		points.map((point, place) => ({ ...point, batch, place }))
	);
}

export function fittingOf(calibration: Calibration, workbook: Workbook): Fitting {
	const all = pointsOf(calibration);
	const ids = (name: string | undefined) =>
		name === undefined ? null : (findSet(workbook, name)?.members.map(({ id }) => id) ?? []);
	const [members, parts] = [ids(calibration.each), ids(calibration.over)];
	const isKnown = ({ at, of }: KnownPoint) =>
		(members === null || members.includes(at ?? '')) &&
		(parts === null || parts.includes(of ?? ''));
	const known = all.filter(isKnown);
	const fits = (members ?? [null]).map((member) =>
		fitOf(
			calibration,
			member,
			member === null ? known : known.filter(({ at }) => at === member),
			parts ?? []
		)
	);
	return { fits, strays: all.filter((point) => !isKnown(point)) };
}

function fitOf(
	{ form }: Calibration,
	member: string | null,
	points: readonly KnownPoint[],
	parts: readonly string[]
): MemberFit {
	if (form === 'shares') {
		const read = fittedShares(
			points.map(({ of = '', group = '', y }) => ({ of, group, y })),
			parts
		);
		return {
			member,
			points,
			fit: null,
			shares: read.ok ? read.shares : null,
			message: read.ok ? '' : read.message
		};
	}
	const read = fitted(
		form,
		points.map(({ x = NaN, y }) => ({ x, y }))
	);
	return {
		member,
		points,
		fit: read.ok ? read.fit : null,
		shares: null,
		message: read.ok ? '' : read.message
	};
}
