/** `npm run build`: the app and the command line, from the sources that are here; options go to the bundler. */
import { build, requireNode } from './setup.mjs';

requireNode();
build(process.argv.slice(2));
