/** Frozen copies: made, described, removed. What one holds no command changes; it only follows new names. */
import { axesOf } from '../axes';
import { frozenSchema, type Frozen, type FrozenQuantity } from '../frozen-schema';
import { findFrozen } from '../frozen';
import { formulasThatRead, scenariosAgainst } from '../frozen-readers';
import { findScenario } from '../lookup';
import type { Values, Workbook } from '../schema';
import { isTree, put } from '../values';
import { edited, refused, type Edit, type FrozenCommand } from './command';
import { listed, mapped } from './lists';
import { withList } from './parts';
import { shapeRefusal } from './refusal';

export function editFrozen(workbook: Workbook, command: FrozenCommand): Edit {
	const all = workbook.frozen ?? [];
	if (command.kind === 'add_frozen') {
		const bad = shapeRefusal(frozenSchema, command.frozen, 'The frozen copy');
		if (bad) return bad;
		if (findFrozen(workbook, command.frozen.id))
			return refused(
				'duplicate-frozen',
				`There is already a frozen copy named ${command.frozen.id}. Choose another title.`
			);
		return withList(workbook, 'frozen', [...all, command.frozen]);
	}
	const copy = findFrozen(workbook, command.id);
	if (!copy)
		return refused(
			'unknown-frozen',
			`There is no frozen copy "${command.id}". Choose one of the workbook's.`
		);
	if (command.kind === 'describe_frozen') {
		const { note: _note, ...rest } = copy;
		const next: Frozen = {
			...rest,
			title: command.title,
			...(command.note !== undefined && { note: command.note })
		};
		const bad = shapeRefusal(frozenSchema, next, copy.title);
		return (
			bad ?? edited({ ...workbook, frozen: mapped(all, (one) => (one === copy ? next : one)) })
		);
	}
	const readers = formulasThatRead(workbook, copy.id);
	const measured = scenariosAgainst(workbook, copy.id);
	if ((readers.length > 0 || measured.length > 0) && command.also !== true)
		return refused('in-use', inUse(copy, readers, measured));
	// Scenarios that are measured against it are measured against the base, as those that name nothing.
	const scenarios = mapped(workbook.scenarios, (scenario) => {
		const { against, ...rest } = scenario;
		return against === copy.id && !findScenario(workbook, copy.id) ? rest : scenario;
	});
	return withList(
		{ ...workbook, scenarios },
		'frozen',
		all.filter((one) => one !== copy)
	);
}

function inUse({ title }: Frozen, readers: readonly string[], measured: readonly string[]): string {
	const said = [
		...(readers.length > 0 ? [`${title} is read by the formula of ${listed(readers)}.`] : []),
		...(measured.length > 0
			? [`${listed(measured)} ${measured.length === 1 ? 'is' : 'are'} compared with ${title}.`]
			: [])
	];
	return `${said.join(' ')} Change these first, or remove it anyway.`;
}

export interface Renames {
	readonly quantity?: (name: string) => string;
	readonly member?: (set: string, id: string) => string;
}

/** The workbook with what its frozen copies name under new names; what they hold stays. */
export function mapFrozenNames(workbook: Workbook, renames: Renames): Workbook {
	if (!workbook.frozen) return workbook;
	const frozen = mapped(workbook.frozen, (copy) => renamed(copy, renames));
	return frozen === workbook.frozen ? workbook : { ...workbook, frozen };
}

function renamed(copy: Frozen, renames: Renames): Frozen {
	const { quantities, sets } = renamedFrozenParts(copy, renames);
	if (quantities === copy.quantities && sets === copy.sets) return copy;
	return { ...copy, quantities, ...(sets && { sets }) };
}

/** What was frozen, under new names: of a copy, or of the grounds of a quote. */
export function renamedFrozenParts(
	copy: Pick<Frozen, 'quantities' | 'sets'>,
	{ quantity, member }: Renames
): Pick<Frozen, 'quantities' | 'sets'> {
	const taken = new Set(copy.quantities.map(({ name }) => name));
	const quantities = mapped(copy.quantities, (one) => {
		const name = quantity?.(one.name) ?? one.name;
		// A quantity that is gone may have had the new name: the copy keeps it as it was.
		const isFree = name !== one.name && !taken.has(name);
		const value = member ? withMembers(one, one.value, member) : one.value;
		// What says why there is none is no member, whatever members are called.
		const { member_of: _choice, ...plain } = one;
		const without = member ? withMembers(plain, one.without, member) : one.without;
		if (!isFree && value === one.value && without === one.without) return one;
		return {
			...one,
			...(isFree && { name }),
			...(value !== undefined && { value }),
			...(without !== undefined && { without })
		};
	});
	const sets =
		copy.sets &&
		mapped(copy.sets, (set) => {
			const members = mapped(set.members, (one) => {
				const id = member?.(set.name, one.id) ?? one.id;
				return id === one.id ? one : { ...one, id };
			});
			return members === set.members ? set : { ...set, members };
		});
	return { quantities, ...(sets && { sets }) };
}

function withMembers(
	{ per, member_of }: Pick<FrozenQuantity, 'per' | 'member_of'>,
	value: Values | undefined,
	member: (set: string, id: string) => string
): Values | undefined {
	const sets = axesOf(per ? { per } : {}).map(({ set }) => set);
	return value === undefined ? undefined : renamedValues({ sets, of: member_of }, value, member);
}

/** A tree of values with the members of these sets, and of the one that it chooses from, under new names. */
export function renamedValues(
	{ sets, of: member_of }: { readonly sets: readonly string[]; readonly of: string | undefined },
	value: Values,
	member: (set: string, id: string) => string
): Values {
	const walk = (here: Values, depth: number): Values => {
		if (!isTree(here))
			return typeof here === 'string' && member_of !== undefined ? member(member_of, here) : here;
		let changed = false;
		const next: { [id: string]: Values } = {};
		for (const id of Object.keys(here)) {
			const set = sets[depth];
			const to = set === undefined ? id : member(set, id);
			const inner = walk(here[id]!, depth + 1);
			if (to !== id || inner !== here[id]) changed = true;
			put(next, to, inner);
		}
		return changed ? next : here;
	};
	return walk(value, 0);
}
