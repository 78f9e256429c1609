/**
 * The one door to zod. Its probe for generated code is switched off before first use, because a
 * strict Content-Security-Policy would report it.
 */
import { z } from 'zod';

z.config({ jitless: true });

export { z };
