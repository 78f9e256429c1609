/** Fetches the workbooks that come with the app, and the values that the build computed for them. */
import type { ShippedValues } from '$lib/engine/shipped-values';

export async function fetchShipped(name: string): Promise<string> {
	const response = await fetch(`/shipped/${name}.json`);
	if (!response.ok) throw new Error(`the server answered ${response.status}`);
	return await response.text();
}

/** null where they cannot be had: the page then waits for its own engine. */
export async function fetchShippedValues(name: string): Promise<ShippedValues | null> {
	try {
		const response = await fetch(`/shipped/values/${name}.json`);
		return response.ok ? ((await response.json()) as ShippedValues) : null;
	} catch {
		return null;
	}
}
