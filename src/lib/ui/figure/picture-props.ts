/** What the component of one kind of picture is given. */
import type { Picture } from '$lib/workbook/schema';
import type { Open } from './open';

export interface PictureProps<P extends Picture = Picture> {
	picture: P;
	open: Open;
	/** Of its heading: 1 where it is the page's first. */
	level: 1 | 2;
}
