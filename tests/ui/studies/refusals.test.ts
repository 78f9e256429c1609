import { describe, expect, it } from 'vitest';
import { Refusals, type Field } from '$lib/ui/studies/refusals';

class FakeField implements Field {
	isConnected = true;
	marks: string[] = [];
	constructor(public value: string) {}
	setAttribute(name: string, value: string) {
		this.marks.push(`${name} ${value}`);
	}
}

function refused(...values: string[]) {
	const refusals = new Refusals<FakeField>();
	const fields = values.map((value) => new FakeField(value));
	for (const field of fields) {
		refusals.changes(field);
		refusals.refuse();
	}
	return { refusals, fields };
}

describe('a refused value in a form', () => {
	it('marks its field and stands until that field is changed', () => {
		const { refusals, fields } = refused('10', '2');
		expect(refusals.standing()).toEqual(fields);
		expect(fields[0]!.marks).toEqual(['aria-invalid true']);
		refusals.changes(fields[0]!);
		expect(refusals.standing()).toEqual([fields[1]]);
		expect(fields[0]!.marks).toEqual(['aria-invalid true', 'aria-invalid false']);
	});

	it('stands no more where the field is gone, or holds something else', () => {
		const { refusals, fields } = refused('10', '2', '3');
		fields[0]!.isConnected = false;
		fields[1]!.value = '0.5';
		expect(refusals.standing()).toEqual([fields[2]]);
		expect(fields[1]!.marks.at(-1)).toBe('aria-invalid false');
	});

	it('marks nothing where a button is refused', () => {
		const { refusals, fields } = refused('10');
		refusals.changes(fields[0]!);
		refusals.changes(null);
		refusals.refuse();
		expect(refusals.standing()).toEqual([]);
	});
});
