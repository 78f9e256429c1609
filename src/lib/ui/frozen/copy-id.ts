/** What formulas are to call a new frozen copy: from its title, and free of every name that means something already. */
import { namesTaken } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { idFrom } from '../scenarios/words';

export const copyId = (workbook: Workbook, title: string): string =>
	idFrom(title, namesTaken(workbook), 'copy');
