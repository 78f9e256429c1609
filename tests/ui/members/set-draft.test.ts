import { describe, expect, it } from 'vitest';
import { draftOf, keepSet } from '$lib/ui/members/set-draft';
import { applyCommand } from '$lib/workbook/commands';
import { shop } from '../shop';

const fresh = { ...draftOf(null), label: ' Coil colour ', plural: 'Coil colours' };

describe('a list in its form', () => {
	it('is added behind the others, under a name made of its label where none is written', () => {
		const command = keepSet(shop, null, { ...fresh, numberUnit: 'mm' });
		expect(command).toEqual({
			...{ kind: 'add_set', index: shop.sets.length },
			set: {
				...{ name: 'coil_colour', label: 'Coil colour', plural: 'Coil colours' },
				...{ number_unit: 'mm', members: [] }
			}
		});
		expect(typeof command === 'object' && applyCommand(shop, command).ok).toBe(true);
		expect(keepSet(shop, null, { ...fresh, name: 'tint' })).toMatchObject({
			set: { name: 'tint' }
		});
	});

	it('says what it lacks', () => {
		expect(keepSet(shop, null, draftOf(null))).toMatch(/^A list needs to say/);
		expect(keepSet(shop, null, { ...fresh, label: '100' })).toMatch(/^Write the name by which/);
	});

	it('is described with all that stands in its form, and with nothing that was emptied', () => {
		const [set] = shop.sets;
		const { numberUnit: _unit, ...draft } = draftOf(set!);
		expect(keepSet(shop, set!, { ...draft, numberUnit: '', note: ' ' })).toEqual({
			...{ kind: 'describe_set', set: set!.name, label: set!.label },
			...(set!.plural && { plural: set!.plural })
		});
	});
});
