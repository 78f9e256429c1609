/** What a PDF says of itself beside the paper's own words. */
import { inLanguage } from '$lib/ui/language';

const en = {
	page: (page: number, of: number) => `${page} of ${of}`,
	producer: 'Metrewright'
};

export const texts = inLanguage({ en });
