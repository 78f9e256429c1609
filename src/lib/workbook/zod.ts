/**
 * The one door to zod for what the page needs: its small form, of which only what the schema uses is fetched, a
 * third of the whole. Its probe for generated code is switched off before first use, because a strict
 * Content-Security-Policy would report it.
 */
import { z } from 'zod/mini';

z.config({ jitless: true });

export { z };
