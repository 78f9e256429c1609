/** What a file may hold: a workbook, with its frozen copies in either of their forms. */
import { filedFrozenListSchema } from './frozen-file';
import { workbookSchema } from './schema';
import { z } from './zod';

export const workbookFileSchema = z.strictObject({
	...workbookSchema.shape,
	frozen: z.optional(filedFrozenListSchema)
});
export type WorkbookFile = z.infer<typeof workbookFileSchema>;
