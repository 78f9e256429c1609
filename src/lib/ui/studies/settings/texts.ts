/** What the fields of settings say. */
import { inLanguage } from '../../language';

const en = {
	// ModeField
	rangeIn: 'Range in',

	// RangeRow
	from: 'From',
	to: 'To',

	// ChoiceField
	gone: (value: string) => `${value} (gone)`,

	// InputField
	input: 'Input',

	// NumberField
	enterANumber: 'Enter a number.',
	plainNumberWithoutUnit: 'This is a plain number, without a unit.',
	thisIsIn: (unit: string) => `This is in ${unit}.`,

	// ResultField
	result: 'Result'
};

export const texts = inLanguage({ en });
