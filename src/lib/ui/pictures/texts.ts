/** What a page of pictures says where it has none. */
import { inLanguage } from '../language';

const en = {
	// PicturePage
	goToTheWorkbook: 'Go to the workbook'
};

export const texts = inLanguage({ en });
