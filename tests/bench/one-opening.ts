/** A process of its own that opens the demo once, cold, and prints how long each part took, as JSON. */
import { baseOf } from '$lib/workbook/lookup';
import { Model } from '$lib/engine/model';
import { timed } from './measure';
import { openShipped } from './shipped';
import type { Opening } from './size-figures';

const workbook = openShipped();
const base = baseOf(workbook).id;
const opened = timed(() => Model.open(workbook));
const model = opened.result;
const first = timed(() => model.results(base));
const rest = timed(() => workbook.scenarios.forEach(({ id }) => model.results(id)));
const opening: Opening = { plan: opened.ms, base: first.ms, rest: rest.ms };
console.log(JSON.stringify(opening));
