/**
 * Where the names of lines stand: beside the line's end where there is room, else on free ground with a
 * leader to it. No name lies over another one or over a line. Pure geometry in pixels.
 */
export interface Spot {
	readonly x: number;
	readonly y: number;
}
export interface Box extends Spot {
	readonly width: number;
	readonly height: number;
}
export interface Named extends Spot {
	readonly width: number;
}
export interface Placed extends Box {
	/** From the line's end to the name; null where the name stands beside it. */
	readonly leader: readonly [Spot, Spot] | null;
}

const HEIGHT = 20;
const BESIDE = 10;

const overlap = (a: Box, b: Box, gap: number) =>
	a.x < b.x + b.width + gap &&
	b.x < a.x + a.width + gap &&
	a.y < b.y + b.height + gap / 2 &&
	b.y < a.y + a.height + gap / 2;

const holds = (box: Box, spot: Spot, gap: number) =>
	spot.x > box.x - gap &&
	spot.x < box.x + box.width + gap &&
	spot.y > box.y - gap / 2 &&
	spot.y < box.y + box.height + gap / 2;

/** Dense enough that no line slips through between two spots. */
export function along(points: readonly Spot[], step = 6): Spot[] {
	const spots: Spot[] = [];
	points.forEach((to, i) => {
		const from = points[i - 1];
		const parts = from ? Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step) : 1;
		for (let part = 1; part <= parts; part++) {
			const share = part / parts;
			spots.push(
				from ? { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share } : to
			);
		}
	});
	return spots;
}

/** Offsets to try: beside the end first, then rings further and further away. */
function candidates(end: Named): Placed[] {
	const beside = {
		x: end.x + BESIDE,
		y: end.y - HEIGHT / 2,
		width: end.width,
		height: HEIGHT,
		leader: null
	};
	const found: Placed[] = [beside];
	for (const distance of [26, 40, 56, 76, 100, 130, 165])
		for (const degrees of [
			60, 120, 45, 135, 30, 150, 300, 240, 315, 225, 330, 210, 90, 270, 15, 165
		]) {
			const angle = (degrees * Math.PI) / 180;
			const tip = {
				x: end.x + distance * Math.cos(angle) * 1.4,
				y: end.y - distance * Math.sin(angle)
			};
			const right = Math.cos(angle) >= 0;
			found.push({
				x: right ? tip.x + 4 : tip.x - end.width - 4,
				y: tip.y - HEIGHT / 2,
				width: end.width,
				height: HEIGHT,
				leader: [{ x: end.x, y: end.y }, tip]
			});
		}
	return found;
}

/**
 * One place for each name, in the order given (the most important first); null where there is no free
 * ground, so that nothing is drawn over anything.
 */
export function placeNames(
	names: readonly Named[],
	lines: readonly Spot[],
	area: Box
): (Placed | null)[] {
	const placed: (Placed | null)[] = [];
	const leaders: Spot[] = [];
	for (const name of names) {
		const taken = placed.filter((one) => one !== null);
		const isFree = (one: Placed) => {
			const inside =
				one.x >= area.x &&
				one.y >= area.y &&
				one.x + one.width <= area.x + area.width &&
				one.y + one.height <= area.y + area.height;
			if (!inside || taken.some((other) => overlap(one, other, 6))) return false;
			if (lines.some((spot) => holds(one, spot, 3)) || leaders.some((spot) => holds(one, spot, 3)))
				return false;
			return (
				!one.leader ||
				!taken.some((other) => along(one.leader ?? []).some((spot) => holds(other, spot, 2)))
			);
		};
		const free = candidates(name).find(isFree) ?? null;
		placed.push(free);
		if (free?.leader) leaders.push(...along(free.leader));
	}
	return placed;
}
