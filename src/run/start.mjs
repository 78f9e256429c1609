/** `npm start`: sets up what is missing, builds if the sources changed, serves. */
import { ensureBuild, ensurePackages, requireNode } from './setup.mjs';

requireNode();
ensurePackages();
ensureBuild();
await import('./serve.mjs');
