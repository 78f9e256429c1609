/** The way to the first screen, where the grid and the reasons are. */
import { goto } from '$app/navigation';
import { page } from '$app/state';
import type { View } from '../view.svelte';

export async function toGrid(): Promise<void> {
	if (page.url.pathname !== '/') await goto('/');
}

/** The grid, at a cell in the column of its scenario. */
export async function toCell(view: View, scenario: string, cell: number): Promise<void> {
	await toGrid();
	view.goTo(scenario, cell);
}

/** Asks why a cell is what it is in a scenario: the reasons stand below the grid. Without a cell there is nothing to ask. */
export function askWhy(view: View, scenario: string, cell: number | null): void {
	if (cell === null) return;
	view.why = { scenario, cell };
	void toGrid();
}
