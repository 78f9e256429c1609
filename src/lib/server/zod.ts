/** The whole of zod, for the server, which coerces and describes; the page takes `workbook/zod.ts`. */
import { z } from 'zod';
import '$lib/workbook/zod';

export { z };
