/**
 * Blocks of the grid to and from the clipboard. What the text says is `block.ts`'s.
 */
import { blockText, cellsDown } from '../block';
import { texts } from '../shell/texts';
import type { GridControl } from './control.svelte';

/** The marked block, or the active cell, as tab-separated text. */
export function copyBlock(control: GridControl, event: ClipboardEvent): void {
	const { layout, results, locale } = control.session;
	if (control.editing || !layout || !event.clipboardData) return;
	const [low, high, left, right] = control.block;
	const cells = cellsDown(control.rows.slice(low, high + 1), 0, layout.cells);
	const columns = control.columns
		.slice(Math.max(left, 1) - 1, Math.max(right, 1))
		.flatMap((id) => results.get(id) ?? []);
	event.clipboardData.setData('text/plain', blockText(layout, cells, columns, locale));
	event.preventDefault();
	control.session.said = `${cells.length * columns.length} values copied`;
}

export async function pasteBlock(control: GridControl, event: ClipboardEvent): Promise<void> {
	const text = event.clipboardData?.getData('text/plain');
	if (control.editing || !text) return;
	event.preventDefault();
	const loaded = await import('./paste').catch(() => null);
	if (loaded) await loaded.pasteText(control, text);
	else control.session.notice = { tone: 'error', text: texts.partNotFetched };
}
