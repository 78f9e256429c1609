/**
 * Text as runs of one font each, and as lines of a width. The app's font comes in files by ranges of signs; a sign that none
 * has is replaced and told, so that no page holds an empty box that reads as nothing.
 */
import type PDFDocument from 'pdfkit';

/** The files of one weight, those of the most used signs first. */
export interface FontFiles {
	readonly regular: readonly Uint8Array[];
	readonly strong: readonly Uint8Array[];
}
export type FontWeight = keyof FontFiles;

export interface Style {
	readonly weight: FontWeight;
	readonly size: number;
	readonly colour: string;
}

export interface Run {
	readonly font: string;
	readonly text: string;
	readonly width: number;
}
export interface Line {
	readonly runs: readonly Run[];
	readonly width: number;
}

/** Of the size: where letters stand within a line, and how high a line is. */
const ASCENT = 0.95;
export const LEADING = 1.35;

/** What stands for a sign that no file has. */
const REPLACED = '?';

export class Letters {
	readonly #doc: PDFDocument;
	readonly #fonts: Readonly<Record<FontWeight, readonly string[]>>;
	readonly #fontOf = new Map<string, string | null>();
	readonly #widths = new Map<string, number>();
	/** Signs that were asked for and that no file has. */
	readonly missing = new Set<string>();

	constructor(doc: PDFDocument, files: FontFiles) {
		this.#doc = doc;
		const names = (weight: FontWeight) =>
			files[weight].map((bytes, i) => {
				const name = `${weight}-${i}`;
				doc.registerFont(name, bytes);
				return name;
			});
		this.#fonts = { regular: names('regular'), strong: names('strong') };
	}

	/** The text in lines of a width: broken at spaces, and within a word only where it is longer than a line. */
	lines(text: string, style: Style, width: number): Line[] {
		return text
			.replace(/\r\n?/g, '\n')
			.split('\n')
			.flatMap((part) => this.#broken(part.replace(/[\t ]+/g, ' ').trim(), style, width));
	}

	#broken(text: string, style: Style, width: number): Line[] {
		const lines: string[] = [];
		let line = '';
		for (const word of text.split(' ')) {
			const longer = line === '' ? word : `${line} ${word}`;
			if (this.widthOf(longer, style) <= width) line = longer;
			else {
				if (line !== '') lines.push(line);
				line = word;
				while (this.widthOf(line, style) > width && [...line].length > 1) {
					const signs = [...line];
					let fits = signs.length - 1;
					while (fits > 1 && this.widthOf(signs.slice(0, fits).join(''), style) > width) fits--;
					lines.push(signs.slice(0, fits).join(''));
					line = signs.slice(fits).join('');
				}
			}
		}
		return [...lines, line].map((one) => {
			const runs = this.#runs(one, style);
			return { runs, width: runs.reduce((sum, run) => sum + run.width, 0) };
		});
	}

	widthOf(text: string, style: Style): number {
		const key = `${style.weight}${style.size} ${text}`;
		const known = this.#widths.get(key);
		if (known !== undefined) return known;
		const width = this.#runs(text, style).reduce((sum, run) => sum + run.width, 0);
		this.#widths.set(key, width);
		return width;
	}

	/** Draws a line whose top is at `y`. */
	draw(line: Line, x: number, y: number, style: Style): void {
		this.drawOn(line, x, y + ASCENT * style.size, style);
	}

	/** Draws a line whose letters stand at `y`. */
	drawOn({ runs }: Line, x: number, y: number, style: Style): void {
		let at = x;
		this.#doc.fillColor(style.colour);
		for (const { font, text, width } of runs) {
			this.#doc.font(font, style.size).text(text, at, y, { lineBreak: false, baseline: 0 });
			at += width;
		}
	}

	#runs(text: string, { weight, size }: Style): Run[] {
		const parts: { font: string; text: string }[] = [];
		for (const sign of text) {
			const found = this.#find(sign, weight);
			const font = found ?? this.#fonts[weight][0]!;
			const shown = found === null ? REPLACED : sign;
			const last = parts.at(-1);
			if (last?.font === font) last.text += shown;
			else parts.push({ font, text: shown });
		}
		return parts.map((part) => ({
			...part,
			width: this.#doc.font(part.font, size).widthOfString(part.text)
		}));
	}

	#find(sign: string, weight: FontWeight): string | null {
		const key = weight + sign;
		const known = this.#fontOf.get(key);
		if (known !== undefined) return known;
		const code = sign.codePointAt(0)!;
		const found =
			this.#fonts[weight].find((font) =>
				this.#doc.font(font)._font.font.hasGlyphForCodePoint(code)
			) ?? null;
		if (found === null) this.missing.add(sign);
		this.#fontOf.set(key, found);
		return found;
	}
}
