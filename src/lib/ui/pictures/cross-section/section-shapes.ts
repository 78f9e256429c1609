/** What a pipe's cross-section is drawn from and of: its dimensions and texts in, figures in pixels out. */

export interface Dimensions {
	readonly outside: number;
	/** The bore first. */
	readonly layers: readonly { readonly thickness: number; readonly role: string }[];
	/** NaN where it has no value; the chain is then not drawn. */
	readonly minimum: number;
	readonly eccentricity: number;
	readonly spread: number;
	readonly wall: number;
	readonly wallInHand: number | null;
}

export interface SectionTexts {
	/** Of each layer, the bore first: its name and its thickness. */
	readonly layers: readonly { readonly name: string; readonly thickness: string }[];
	readonly outside: readonly string[];
	readonly facts: readonly string[];
	readonly minimum: string;
	readonly eccentricity: string;
	readonly spread: string;
	readonly wall: string;
	readonly selectedScenario: string;
	/** "5 mm" for the length of a scale bar. */
	readonly length: (length: number) => string;
}

export type Tone = 'ink' | 'muted' | 'strong' | 'hand';
export interface Text {
	readonly x: number;
	readonly y: number;
	readonly text: string;
	readonly anchor: 'start' | 'middle' | 'end';
	readonly tone: Tone;
}
export interface Stroke {
	readonly d: string;
	readonly tone: 'leader' | 'line' | 'hand' | 'edge';
}
export interface Disc {
	readonly radius: number;
	/** null is the bore. */
	readonly role: string | null;
	readonly soft: boolean;
}
export interface Band {
	readonly x: number;
	readonly width: number;
	readonly role: string;
	/** Wide areas are paler, so that the thin layers win. */
	readonly soft: boolean;
}
export interface Drawing {
	readonly width: number;
	readonly height: number;
	readonly ring: { readonly x: number; readonly y: number; readonly discs: readonly Disc[] };
	readonly wall: { readonly y: number; readonly height: number; readonly bands: readonly Band[] };
	readonly strokes: readonly Stroke[];
	readonly texts: readonly Text[];
}

/** Where ring and wall stand in the room there is. */
export interface Frame {
	readonly wide: boolean;
	readonly radius: number;
	readonly ringX: number;
	readonly ringY: number;
	readonly wallX: number;
	readonly wallY: number;
	readonly wallWidth: number;
	readonly wallHeight: number;
	readonly factsX: number;
	readonly width: number;
}
