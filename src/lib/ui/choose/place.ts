/** Where the list of a chooser lies: below its field, above it where there is more room, within the window. */

export interface Box {
	readonly left: number;
	readonly top: number;
	readonly bottom: number;
	readonly width: number;
}
export interface Room {
	readonly width: number;
	readonly height: number;
}
export interface ListPlace {
	readonly left: number;
	/** One of both. */
	readonly top: number | null;
	readonly bottom: number | null;
	readonly width: number;
	readonly height: number;
}

const EDGE = 8;
const GAP = 2;
const MOST = { width: 460, height: 380 };
const LEAST = { width: 280, height: 200 };

export function listPlace(field: Box, room: Room): ListPlace {
	const width = Math.min(
		room.width - 2 * EDGE,
		Math.max(LEAST.width, Math.min(MOST.width, Math.max(field.width, 360)))
	);
	const left = Math.max(EDGE, Math.min(field.left, room.width - EDGE - width));
	const below = room.height - EDGE - field.bottom - GAP;
	const above = field.top - EDGE - GAP;
	const isAbove = below < LEAST.height && above > below;
	return {
		...{ left, width },
		top: isAbove ? null : field.bottom + GAP,
		bottom: isAbove ? room.height - field.top + GAP : null,
		height: Math.max(80, Math.min(MOST.height, isAbove ? above : below))
	};
}

export function placeBelow(list: HTMLElement, field: Box) {
	const { left, top, bottom, width, height } = listPlace(field, {
		width: document.documentElement.clientWidth,
		height: window.innerHeight
	});
	const px = (length: number | null) => (length === null ? 'auto' : `${length}px`);
	Object.assign(list.style, {
		...{ left: px(left), top: px(top), bottom: px(bottom) },
		...{ width: px(width), maxHeight: px(height) }
	});
}
