/**
 * A figure as a file: the picture as PNG or SVG, its table as CSV.
 */
import { download, fileNameOf } from '$lib/browser/files';
import { csvOf, type PlainTable } from '$lib/exchange/csv/write';
import type { Description } from '../svg/svg-file';
import { figureAsCanvas } from './as-canvas';
import { figureAsSvg } from './as-svg';

export function takeTable(title: string, table: PlainTable): void {
	download(`${fileNameOf(title)}.csv`, csvOf(table), 'text/csv;charset=utf-8');
}

/** Gives a sentence if the browser cannot make the picture. */
export async function takePicture(title: string, figure: HTMLElement): Promise<string> {
	const blob = await new Promise<Blob | null>((done) =>
		figureAsCanvas(figure).toBlob(done, 'image/png')
	);
	if (!blob)
		return 'The picture could not be made: it is too large for this browser. Take the table instead.';
	const url = URL.createObjectURL(blob);
	const link = document.createElement('a');
	link.href = url;
	link.download = `${fileNameOf(title)}.png`;
	link.click();
	setTimeout(() => URL.revokeObjectURL(url), 10_000);
	return '';
}

/** Gives a sentence if the browser cannot make the drawing. */
export function takeSvg(title: string, figure: HTMLElement, told: Description): string {
	const svg = figureAsSvg(figure, told);
	if (svg === null)
		return 'The SVG could not be made: this browser draws on no canvas, so words cannot be measured. Take the table instead.';
	download(`${fileNameOf(title)}.svg`, svg, 'image/svg+xml;charset=utf-8');
	return '';
}
