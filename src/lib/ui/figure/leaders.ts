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

interface Candidate extends Placed {
	readonly distance: number;
}

/** Places to try: beside the end, then in rings further and further away. */
function candidates(end: Named): Candidate[] {
	const size = { width: end.width, height: HEIGHT };
	const found: Candidate[] = [
		{ ...size, x: end.x + BESIDE, y: end.y - HEIGHT / 2, leader: null, distance: 0 }
	];
	for (const distance of [24, 36, 50, 66, 84, 104, 128, 156, 190])
		for (let degrees = 15; degrees < 360; degrees += 15) {
			const angle = (degrees * Math.PI) / 180;
			const tip = { x: end.x + distance * Math.cos(angle), y: end.y - distance * Math.sin(angle) };
			const leader = [{ x: end.x, y: end.y }, tip] as const;
			const right = Math.cos(angle) > -1e-9;
			const x = right ? tip.x + 4 : tip.x - end.width - 4;
			found.push({ ...size, distance, leader, x, y: tip.y - HEIGHT / 2 });
			// Steep leaders may also end under or over the middle of the name.
			if (Math.abs(Math.cos(angle)) > 0.6) continue;
			const y = tip.y < end.y ? tip.y - HEIGHT - 2 : tip.y + 2;
			for (const share of [0.25, 0.5, 0.75])
				found.push({ ...size, distance: distance + 10, leader, x: tip.x - end.width * share, y });
		}
	return found;
}

/** What a line crossed by a leader weighs, in pixels of distance. */
const CROSSING = 45;

/** How often a leader runs over a line on its way; its own line at the end does not count. */
function crossings(leader: readonly [Spot, Spot], lines: readonly Spot[]): number {
	const near = along(leader, 3).filter(
		(spot) => Math.hypot(spot.x - leader[0].x, spot.y - leader[0].y) > 8
	);
	let met = 0;
	let before = false;
	for (const spot of near) {
		const now = lines.some(
			(line) => Math.abs(line.x - spot.x) < 4 && Math.abs(line.y - spot.y) < 4
		);
		if (now && !before) met++;
		before = now;
	}
	return met;
}

/** A name that finds no place weighs more than any leader. */
const UNPLACED = 1000;

/**
 * One place for each name; null where there is no free ground, so that nothing is drawn over anything.
 * Whoever comes first takes the best ground, so each name is let first once, and the lightest whole wins.
 */
export function placeNames(
	names: readonly Named[],
	lines: readonly Spot[],
	area: Box
): (Placed | null)[] {
	let best: (Placed | null)[] = names.map(() => null);
	let least = Infinity;
	for (const first of names.keys()) {
		const order = [...names.keys()].sort((a, b) => Number(b === first) - Number(a === first));
		const { weight, placed } = placeInOrder(names, order, lines, area);
		if (weight < least) [best, least] = [placed, weight];
	}
	return best;
}

function placeInOrder(
	names: readonly Named[],
	order: readonly number[],
	lines: readonly Spot[],
	area: Box
) {
	const placed: (Placed | null)[] = names.map(() => null);
	const taken: Box[] = [];
	const leaders: Spot[] = [];
	let weight = 0;
	for (const place of order) {
		const name = names[place];
		if (!name) continue;
		const found = lightest(name, lines, leaders, taken, area);
		weight += found?.weight ?? UNPLACED;
		if (!found) continue;
		const { x, y, width, height, leader } = found.at;
		placed[place] = { x, y, width, height, leader };
		taken.push(found.at);
		if (leader) leaders.push(...along(leader));
	}
	return { weight, placed };
}

function lightest(
	name: Named,
	lines: readonly Spot[],
	leaders: readonly Spot[],
	taken: readonly Box[],
	area: Box
): { at: Candidate; weight: number } | null {
	const isFree = (placed: Placed) => {
		const inside =
			placed.x >= area.x &&
			placed.y >= area.y &&
			placed.x + placed.width <= area.x + area.width &&
			placed.y + placed.height <= area.y + area.height;
		if (!inside || taken.some((other) => overlap(placed, other, 6))) return false;
		if (
			lines.some((spot) => holds(placed, spot, 3)) ||
			leaders.some((spot) => holds(placed, spot, 3))
		)
			return false;
		const { leader } = placed;
		return !leader || !along(leader).some((spot) => taken.some((other) => holds(other, spot, 2)));
	};
	let best: { at: Candidate; weight: number } | null = null;
	for (const at of candidates(name)) {
		if (at.distance >= (best?.weight ?? Infinity) || !isFree(at)) continue;
		const over = at.leader ? crossings(at.leader, [...lines, ...leaders]) : 0;
		const weight = at.distance + CROSSING * over;
		if (weight < (best?.weight ?? Infinity)) best = { at, weight };
	}
	return best;
}
