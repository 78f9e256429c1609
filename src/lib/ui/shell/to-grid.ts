/** The way to the first screen, where the grid and the reasons are. */
import { goto } from '$app/navigation';
import { page } from '$app/state';

export async function toGrid(): Promise<void> {
	if (page.url.pathname !== '/') await goto('/');
}
