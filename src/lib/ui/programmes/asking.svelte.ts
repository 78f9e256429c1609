/**
 * An answer about a plan that follows the workbook: asked anew once an edit has been planned, and kept until then, as
 * long as its cells are those of the workbook on screen.
 */
import { hasSameStructure } from '$lib/engine/structure';
import type { AnswerTo, Question } from '$lib/programmes/inquiry/questions';
import type { Workbook } from '$lib/workbook/schema';
import type { Session } from '../session.svelte';

type Of<K extends Question['kind']> = Extract<Question, { kind: K }>;

export interface Asking<K extends Question['kind']> {
	/** Null until there is one. */
	readonly reply: AnswerTo<K> | null;
	/** Whether another is on its way. */
	readonly busy: boolean;
}

/** To be called while a component is made. `question` gives null where nothing is asked. */
export function asking<K extends Question['kind']>(
	session: Session,
	question: () => Of<K> | null
): Asking<K> {
	let heard = $state.raw<{ reply: AnswerTo<K>; of: string; workbook: Workbook } | null>(null);
	let busy = $state(false);
	const asked = $derived(JSON.stringify(question()));
	$effect(() => {
		const { planning, workbook, isSettled } = session;
		if (asked === 'null' || !workbook) return;
		busy = true;
		if (!planning || planning.busy || !isSettled) return;
		let stale = false;
		const of = asked;
		void planning.ask<K>(JSON.parse(of) as Of<K>).then((reply) => {
			if (stale) return;
			heard = { reply, of, workbook };
			busy = false;
		});
		return () => {
			stale = true;
		};
	});
	return {
		get reply() {
			const { workbook } = session;
			if (!heard || heard.of !== asked || !workbook) return null;
			return hasSameStructure(heard.workbook, workbook) ? heard.reply : null;
		},
		get busy() {
			return asked !== 'null' && busy;
		}
	};
}
