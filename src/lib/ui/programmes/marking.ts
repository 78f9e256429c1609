/** All that marks figures which are out of date: fetched with the solver, as there is nothing to mark without one. */
import { staleCells } from './stale-plans';
import { staleTexts } from './stale-texts';
import StaleLine from './StaleLine.svelte';

export const marking = { staleCells, StaleLine, texts: staleTexts };
export type Marking = typeof marking;
