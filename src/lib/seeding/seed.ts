/** Seeds faults one at a time, each into the sound workbook, and says what became of each. The same seed gives the same. */
import { Model } from '$lib/engine/model';
import type { Workbook } from '$lib/workbook/schema';
import { Dice } from './dice';
import * as entries from './entry-faults';
import {
	CLASSES,
	CLASS_NAMES,
	type Fault,
	type FaultClass,
	type Seeder,
	type Sound
} from './fault';
import * as formulas from './formula-faults';
import { Judge, type Follow, type Verdict } from './judge';
import { meantEdit } from './legit-edits';

const SEEDERS: Readonly<Record<FaultClass, Seeder>> = {
	unit: entries.unitSlip,
	magnitude: entries.magnitudeSlip,
	reference: formulas.wrongReference,
	dropped: formulas.droppedPart,
	operator: formulas.otherOperator,
	hard_coded: formulas.hardCoded,
	range_of_sum: formulas.rangeOfSum,
	condition: formulas.turnedCondition,
	stale: entries.staleCopy,
	scale: formulas.scaleConstant,
	missing: entries.missingEntry,
	omission: (sound, dice) =>
		dice.chance(0.6)
			? entries.scenarioOmission(sound, dice)
			: entries.structureOmission(sound, dice)
};

/** Draws that lead to nothing before a class is given up: a small workbook may hold no such place. */
const TRIES = 60;

export interface SeedingSettings {
	readonly faults: number;
	/** Edits that are meant as they are. */
	readonly meant: number;
	readonly seed: number;
	/** Left out: plans stay as they are. */
	readonly follow?: Follow | undefined;
}

/** Hands over each verdict as it is found: faults first, then the edits that are meant. */
export function* seedFaults(
	workbook: Workbook,
	{ faults, meant, seed, follow }: SeedingSettings
): Generator<Verdict> {
	const model = Model.open(workbook);
	const sound: Sound = { workbook, plan: model.plan, base: copyOf(model) };
	const judge = new Judge(model, follow ?? null);
	for (const fault of drawn(sound, faults, new Dice(seed))) yield judge.judge(fault);
	const dice = new Dice(seed + 1);
	for (let i = 0; i < meant; i++) {
		const edit = tried(meantEdit, sound, dice);
		if (edit) yield judge.judge(edit);
	}
}

const copyOf = (model: Model) => {
	const { values, states } = model.column(model.workbook.scenarios[0]!.id);
	return { values: values.slice(), states: states.slice() };
};

/** In the classes' proportions; what a class cannot give is left out. */
function* drawn(sound: Sound, count: number, dice: Dice): Generator<Fault> {
	const all = CLASS_NAMES.reduce((sum, name) => sum + CLASSES[name].weight, 0);
	let [weight, done] = [0, 0];
	for (const name of CLASS_NAMES) {
		weight += CLASSES[name].weight;
		const upTo = Math.round((count * weight) / all);
		for (; done < upTo; done++) {
			const fault = tried(SEEDERS[name], sound, dice);
			if (fault) yield fault;
		}
	}
}

function tried(seeder: Seeder, sound: Sound, dice: Dice): Fault | null {
	for (let i = 0; i < TRIES; i++) {
		const fault = seeder(sound, dice);
		if (fault) return fault;
	}
	return null;
}
