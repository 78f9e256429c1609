/** `npm run build`: the app and the command line, from the sources that are here. */
import { build, requireNode } from './setup.mjs';

requireNode();
build();
