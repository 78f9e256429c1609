/**
 * Keys that hold on every page: undo, redo, open, save a copy.
 */
import type { OpenDocument } from '../open-document.svelte';
import type { Session } from '../session.svelte';

/** Fields with an undo of their own; a tick, a slider or a file has none. */
const TEXT =
	'textarea, input:not([type=file], [type=checkbox], [type=radio], [type=range], [type=button])';

export function shortcuts(
	event: KeyboardEvent,
	session: Session,
	openDocument: OpenDocument,
	open: () => void
): void {
	if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
	const inText = (event.target as HTMLElement).closest?.(TEXT);
	const key = event.key.toLowerCase();
	if (key === 's') void openDocument.saveCopy();
	else if (key === 'o') open();
	// Inside a field, undo belongs to the text.
	else if (inText) return;
	else if (key === 'y' || (key === 'z' && event.shiftKey)) session.redo();
	else if (key === 'z') session.undo();
	else return;
	event.preventDefault();
}
