/**
 * What every formula of a workbook is proven against: where quantities lie, what type and unit each has,
 * the numbers and spans of sets, which sets have members that are present in some scenarios only, and the
 * values of inputs that no scenario changes.
 */
import { ONE } from '$lib/units/algebra';
import { UnitSystem } from '$lib/units/system';
import type { Unit } from '$lib/units/unit';
import { findFrozen } from '$lib/workbook/frozen';
import { isMeasuredByCopies } from '$lib/workbook/frozen-readers';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { layOut, type Layout, type QuantityLayout } from '../layout';
import { fixedValues, type FixedValues } from './fixed-values';
import { frozenValues } from '../frozen';
import { rulesOf, type Rules } from './rules';
import { BAD, YES_NO, numberIn, type ValueType } from './types';

/** A quantity as formulas see it. */
export interface KnownQuantity {
	readonly layout: QuantityLayout;
	readonly type: ValueType;
	/** Why its type is not known. */
	readonly fault: string | null;
	readonly rules: Rules;
	/** Values by cell from the layout's base, for an input fixed with the structure. */
	readonly fixed: FixedValues | null;
	/** The frozen copy that holds the values: the plan has no cells of it. */
	readonly frozen?: string;
}

/** Quantities as frozen copies hold them are numbered from here, after all that have cells. */
const FIRST_FROZEN = 1_000_000;

/** A set as formulas see it. */
export interface KnownSet {
	readonly name: string;
	readonly plural: string;
	readonly ids: readonly string[];
	readonly ordinals: ReadonlyMap<string, number>;
	readonly cyclic: boolean;
	/** Members' numbers with their unit; null where a member has none. */
	readonly numbers: { readonly values: readonly number[]; readonly unit: Unit } | null;
	readonly span: { readonly value: number; readonly unit: Unit } | null;
	/** The yes/no quantity that says which members are present. */
	readonly present: QuantityLayout | null;
}

export class Context {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly units: UnitSystem;
	readonly sets: Map<string, KnownSet> = new Map();
	readonly #quantities: KnownQuantity[] = [];
	readonly #byName: Map<string, KnownQuantity> = new Map();
	/** Whether `x[reference]` may read a frozen copy, which may hold what no scenario changes otherwise, or not at all. */
	readonly isMeasuredByCopies: boolean;
	readonly #frozen: KnownQuantity[] = [];
	readonly #frozenPlaces = new Map<KnownQuantity, Map<string, KnownQuantity>>();

	constructor(workbook: Workbook, layout = layOut(workbook), model: Context | null = null) {
		this.workbook = workbook;
		this.layout = layout;
		this.isMeasuredByCopies = isMeasuredByCopies(workbook);
		if (model) {
			this.units = model.units;
			this.sets = model.sets;
			this.#quantities.push(...model.#quantities);
			this.#byName = new Map(model.#byName);
			return;
		}
		this.units = UnitSystem.create(workbook.units ?? []).system;
		for (const quantity of layout.quantities) {
			const known = this.know(quantity);
			this.#quantities.push(known);
			if (!this.#byName.has(quantity.quantity.name))
				this.#byName.set(quantity.quantity.name, known);
		}
		for (const set of workbook.sets) this.#addSet(set.name);
	}

	get quantities(): readonly KnownQuantity[] {
		return this.#quantities;
	}

	quantity(name: string): KnownQuantity | undefined {
		return this.#byName.get(name);
	}

	at(index: number): KnownQuantity | undefined {
		return index < FIRST_FROZEN ? this.#quantities[index] : this.#frozen[index - FIRST_FROZEN];
	}

	/** A quantity as a frozen copy holds it: an input that is fixed with the structure. Undefined where there is no such copy. */
	frozen(id: string, known: KnownQuantity): KnownQuantity | undefined {
		const copy = findFrozen(this.workbook, id);
		if (!copy) return undefined;
		const places = this.#frozenPlaces.get(known) ?? new Map<string, KnownQuantity>();
		this.#frozenPlaces.set(known, places);
		let held = places.get(id);
		if (!held) {
			const index = FIRST_FROZEN + this.#frozen.length;
			held = {
				...known,
				layout: { ...known.layout, index },
				rules: rulesOf({ ...known.layout, quantity: entered(known.layout.quantity) }, this.layout),
				fixed: frozenValues(this.layout, this.units, known.layout, copy),
				frozen: id
			};
			this.#frozen.push(held);
			places.set(id, held);
		}
		return held;
	}

	/** The same workbook with one quantity put in the place of its namesake, or added. */
	withDraft(draft: QuantityLayout): Context {
		const context = new Context(this.workbook, this.layout, this);
		const known = context.know(draft);
		context.#quantities[draft.index] = known;
		context.#byName.set(draft.quantity.name, known);
		return context;
	}

	know(layout: QuantityLayout): KnownQuantity {
		const { quantity } = layout;
		const { type, fault } = this.#typeOf(quantity);
		const problem = this.layout.problems.find((problem) => problem.quantity === quantity.name);
		const rules = rulesOf(layout, this.layout);
		const isFixed = quantity.fixed === true && rules.parts.length === 0;
		return {
			layout,
			type: problem ? BAD : type,
			fault: problem?.message ?? fault,
			rules,
			fixed: isFixed ? fixedValues(layout, this.layout) : null
		};
	}

	#typeOf(quantity: Quantity): { type: ValueType; fault: string | null } {
		if (quantity.type === 'yes_no') return { type: YES_NO, fault: null };
		if (typeof quantity.type === 'object') {
			const set = quantity.type.member_of;
			if (this.layout.sets.has(set)) return { type: { kind: 'member', set }, fault: null };
			const fault = `${quantity.name} is a member of ${set}, but there is no set of that name: choose another.`;
			return { type: BAD, fault };
		}
		const unit = this.units.parse(quantity.unit ?? '');
		if (unit.ok) return { type: numberIn(unit.unit), fault: null };
		return { type: BAD, fault: unit.problem.message };
	}

	#addSet(name: string): void {
		const set = this.layout.sets.get(name);
		const ordinals = this.layout.ordinals.get(name);
		if (!set || !ordinals) return;
		const numberUnit = this.units.parse(set.number_unit ?? '');
		const values = set.members.flatMap((member) => member.number ?? []);
		const hasNumbers = set.members.length > 0 && values.length === set.members.length;
		const span = set.spans === undefined ? null : this.units.parseAmount(set.spans);
		const present = set.present === undefined ? undefined : this.#byName.get(set.present);
		const says =
			present?.type.kind === 'yes_no' &&
			present.layout.axes.length === 1 &&
			present.layout.axes[0]?.set === name &&
			!present.layout.cellOfPlace;
		this.sets.set(name, {
			name,
			plural: set.plural ?? `members of ${name}`,
			ids: set.members.map((member) => member.id),
			ordinals,
			cyclic: set.cyclic === true,
			numbers: hasNumbers ? { values, unit: numberUnit.ok ? numberUnit.unit : ONE } : null,
			span: span?.ok ? { value: span.value, unit: span.unit } : null,
			present: says ? present.layout : null
		});
	}
}

/** The quantity without the formula by which it is computed today. */
function entered(quantity: Quantity): Quantity {
	const { formula: _formula, where: _where, ...rest } = quantity;
	return rest;
}
