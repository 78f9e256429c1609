import { expect, it, vi } from 'vitest';
import { Template } from '$lib/ui/template.svelte';

it('a shipped workbook that cannot be fetched is told of, and asked for again', async () => {
	vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no connection')));
	try {
		const template = new Template();
		await template.fetch('marram-coil-works');
		expect([template.failed, template.workbook]).toEqual([true, null]);
		const again = template.fetch('marram-coil-works');
		expect(template.failed).toBe(false);
		await again;
		expect(template.failed).toBe(true);
		await template.fetch(undefined);
		expect(template.failed).toBe(false);
	} finally {
		vi.unstubAllGlobals();
	}
});
